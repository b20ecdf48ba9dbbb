using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using PileController.Commands.Access;
using PileController.Commands.Calc;
using PileController.Commands.Checking;
using PileController.Commands.Ledgers;
using PileController.Commands.Rigs;
using PileController.Commands.Running;
using PileController.Commands.Shell;

namespace PileController.Commands;

/// <summary>All commands of the program.</summary>
internal static class CommandTree
{
    // Long enough for outputs and record; shorter than the service manager's patience.
    private static readonly TimeSpan LongestEnd = TimeSpan.FromSeconds(15);

    private static readonly (string Name, Func<Command> Create)[] All =
    [
        ("serve", ServeCommand.Create),
        ("check", CheckCommand.Create),
        ("calc", CalcCommand.Create),
        ("season", SeasonCommand.Create),
        ("plan", PlanCommand.Create),
        ("record", RecordCommand.Create),
        ("ledger", LedgerCommand.Create),
        ("passphrase", PassphraseCommand.Create),
        ("rig", RigCommand.Create),
    ];

    /// <summary>Runs one command line.</summary>
    /// <param name="args">The words after the program's name; none at all means serve.</param>
    /// <param name="output">Where answers go.</param>
    /// <param name="error">Where complaints go.</param>
    /// <returns>0 done, 1 the answer is no, 2 wrong use.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, TextWriter output, TextWriter error)
    {
        // "@file" is not expanded: a value that begins with @ is a value.
        ParserConfiguration reading = new() { ResponseFileTokenReplacer = null, EnablePosixBundling = false };
        IReadOnlyList<string> words = WithDefault(args);
        ParseResult parse = Root(Named(words[0])).Parse(words, reading);
        if (parse.Action is ParseErrorAction)
        {
            return WrongUse.Report(parse, error);
        }

        InvocationConfiguration running = new() { Output = output, Error = error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = LongestEnd };
        return await parse.InvokeAsync(running).ConfigureAwait(false);
    }

    /// <summary>The tree.</summary>
    public static RootCommand Create() => Root(All);

    // A start after a cut should not wait for the making of all the others.
    private static IEnumerable<(string Name, Func<Command> Create)> Named(string word) =>
        All.Any(one => one.Name == word) ? All.Where(one => one.Name == word) : All;

    private static RootCommand Root(IEnumerable<(string Name, Func<Command> Create)> commands)
    {
        RootCommand root = new("Draws heat from a compost heap for a greenhouse, and no more than the heap can bear.");
        foreach ((_, Func<Command> create) in commands)
        {
            root.Subcommands.Add(create());
        }

        HelpOption help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExample((HelpAction)help.Action!);
        return root;
    }

    /// <summary>A command line that begins with an option of serve is one of serve.</summary>
    private static IReadOnlyList<string> WithDefault(IReadOnlyList<string> args) =>
        args.Count == 0 || (args[0].StartsWith('-') && args[0] is not ("-h" or "-?" or "--help" or "--version"))
            ? ["serve", .. args]
            : args;
}
