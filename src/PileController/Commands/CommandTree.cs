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

    /// <summary>Runs one command line.</summary>
    /// <param name="args">The words after the program's name; none at all means serve.</param>
    /// <param name="output">Where answers go.</param>
    /// <param name="error">Where complaints go.</param>
    /// <returns>0 done, 1 the answer is no, 2 wrong use.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, TextWriter output, TextWriter error)
    {
        // "@file" is not expanded: a value that begins with @ is a value.
        ParserConfiguration reading = new() { ResponseFileTokenReplacer = null, EnablePosixBundling = false };
        ParseResult parse = Create().Parse(WithDefault(args), reading);
        if (parse.Action is ParseErrorAction)
        {
            return WrongUse.Report(parse, error);
        }

        InvocationConfiguration running = new() { Output = output, Error = error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = LongestEnd };
        return await parse.InvokeAsync(running).ConfigureAwait(false);
    }

    /// <summary>The tree.</summary>
    public static RootCommand Create()
    {
        RootCommand root = new("Draws heat from a compost heap for a greenhouse, and no more than the heap can bear.")
        {
            ServeCommand.Create(),
            CheckCommand.Create(),
            CalcCommand.Create(),
            SeasonCommand.Create(),
            PlanCommand.Create(),
            RecordCommand.Create(),
            LedgerCommand.Create(),
            PassphraseCommand.Create(),
            RigCommand.Create(),
        };
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
