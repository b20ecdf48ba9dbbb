using System.CommandLine;
using System.CommandLine.Parsing;
using PileController.Units;

namespace PileController.Commands.Shell;

/// <summary>Says on the error stream how a command line was wrong: what was given and what is allowed.</summary>
internal static class WrongUse
{
    /// <summary>One line for each thing wrong, then where to read on.</summary>
    public static int Report(ParseResult parse, TextWriter error)
    {
        Command command = parse.CommandResult.Command;
        foreach (string message in Messages(parse, command).Distinct())
        {
            error.WriteLine(message);
        }

        error.WriteLine($"See: {Name(command)} --help");
        return ExitCodes.WrongUse;
    }

    private static IEnumerable<string> Messages(ParseResult parse, Command command)
    {
        IReadOnlyList<string> unmatched = parse.UnmatchedTokens;
        for (int i = 0; i < unmatched.Count; i++)
        {
            // What follows an unknown option is most likely its value: one complaint is enough.
            if (i == 0 || unmatched[i].StartsWith('-') || !unmatched[i - 1].StartsWith('-'))
            {
                yield return Unknown(unmatched[i], command);
            }
        }

        Option[] missing = [.. command.Options.Where(o => o.Required && parse.GetResult(o) is not { Implicit: false })];
        foreach (Option option in missing)
        {
            yield return $"{option.Name} is missing; allowed: {option.Description}";
        }

        if (command.Subcommands.Count > 0)
        {
            if (unmatched.Count == 0)
            {
                yield return $"{Name(command)}: a command is missing; allowed: {Words(command.Subcommands)}";
            }

            yield break;
        }

        Option[] repeated = [.. command.Options.Where(o => o.Arity.MaximumNumberOfValues == 1 && parse.GetResult(o) is { IdentifierTokenCount: > 1 })];
        foreach (Option option in repeated)
        {
            yield return $"{option.Name} is given {parse.GetResult(option)!.IdentifierTokenCount} times; allowed: once";
        }

        // The library's own words name neither the nearest nor the allowed: only what was not said above is passed on.
        string[] said = [.. unmatched, .. missing.Concat(repeated).Select(o => o.Name)];
        foreach (ParseError e in parse.Errors.Where(e => !said.Any(t => e.Message.Contains($"'{t}'", StringComparison.Ordinal))))
        {
            yield return e.Message;
        }
    }

    private static string Unknown(string token, Command command)
    {
        bool isOption = token.StartsWith('-');
        IEnumerable<Symbol> known = isOption ? command.Options : command.Subcommands;
        string near = Nearest.Of(token, known.Select(s => s.Name)) is string name ? $"; the nearest known is {name}" : "";
        string what = isOption ? "unknown option" : command.Subcommands.Count > 0 ? "unknown command" : "unexpected argument";
        string allowed = known.Any() ? Words(known) : "none here";
        return $"{Name(command)}: {what} {token}{near}; allowed: {allowed}";
    }

    private static string Words(IEnumerable<Symbol> symbols) => string.Join(", ", symbols.Select(s => s.Name));

    private static string Name(Command command)
    {
        string own = command is RootCommand ? "PileController" : command.Name;
        return command.Parents.OfType<Command>().FirstOrDefault() is Command parent ? $"{Name(parent)} {own}" : own;
    }
}
