using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using PileController.Commands.Shell;

namespace PileController.Benchmarks.Bounds;

/// <summary>bound: finds the bound of the recorded winters, or of one weather file, and what the rules capture of it.</summary>
internal static class BoundCommand
{
    private static readonly Option<string?> WeatherPath = new("--weather") { Description = "Weather: hourly CSV, daily CSV or EPW; the four recorded winters when left out." };
    private static readonly Option<DateOnly> Start = Ask.Of<DateOnly>("--start", "First day, as 2012-11-01; goes with --weather.", ReadDay);
    private static readonly Option<int> Days = Ask.Of<int>("--days", "How many days, 20 to 400; 150 when left out.", ReadWhole(20, 400)).Unless(150);
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file; Alder Bank's when left out." };
    private static readonly Option<string?> Winter = new("--winter") { Description = "Only the recorded winters whose name has this in it." };
    private static readonly Option<int> Rounds = Ask.Of<int>("--rounds", "Rounds a start is given, 12 to 500; each lives the season once.", ReadWhole(12, 500)).Unless(Bound.Rounds);
    private static readonly Option<string?> Cache = new("--cache") { Description = "Folder the bounds are kept in; beside the program when left out." };
    private static readonly Option<bool> Check = new("--check") { Description = "Only holds the pieces of the bound against the plant." };

    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        ParseResult parse = Root().Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parse.Action is ParseErrorAction)
        {
            foreach (System.CommandLine.Parsing.ParseError fault in parse.Errors)
            {
                error.WriteLine(fault.Message);
            }

            return ExitCodes.WrongUse;
        }

        return await parse.InvokeAsync(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false });
    }

    private static RootCommand Root()
    {
        PileCommand command = new(
            "bound", "Finds what the best of planners could do, knowing plant and weather, and what the draw rules capture of it.",
            "dotnet run -c Release --project tests/PileController.Benchmarks -- bound --winter \"New York\"")
        {
            WeatherPath, Start, Days, SettingsPath, Winter, Rounds, Cache, Check,
        };
        command.SetAction((parse, _) => Task.FromResult(Run(parse)));
        RootCommand root = new("Measures that belong to no test.") { command };
        HelpOption help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExample((HelpAction)help.Action!);
        return root;
    }

    private static int Run(ParseResult parse)
    {
        InvocationConfiguration shell = parse.InvocationConfiguration;
        if (SettingsSource.Sound(parse, SettingsPath) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        DateOnly? start = parse.GetResult(Start) is null ? null : parse.GetValue(Start);
        if (BoundSeasons.Of(settings, parse.GetValue(WeatherPath), start, parse.GetValue(Days), parse.GetValue(Winter), shell.Error) is not { } seasons)
        {
            return ExitCodes.WrongUse;
        }

        bool check = parse.GetValue(Check);
        IReadOnlyList<string> wrong = [.. SelfTest.Faults(), .. check ? SelfTest.RuleFaults() : []];
        foreach (string fault in wrong)
        {
            shell.Error.WriteLine(fault);
        }

        if (wrong.Count > 0)
        {
            return ExitCodes.No;
        }

        if (check)
        {
            shell.Output.WriteLine("The bound's own pieces hold against the plant.");
            return ExitCodes.Done;
        }

        string cache = parse.GetValue(Cache) ?? Path.Combine(AppContext.BaseDirectory, "bounds");
        BoundText text = new(shell.Output, shell.Error);
        text.Head();
        foreach (BoundSeason season in seasons)
        {
            text.One(season, cache, parse.GetValue(Rounds));
        }

        return ExitCodes.Done;
    }

    private static bool ReadDay(string text, out DateOnly value, [NotNullWhen(false)] out string? allowed)
    {
        bool good = DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out value);
        allowed = good ? null : "a day as 2012-11-01";
        return good;
    }

    private static Ask.Reader<int> ReadWhole(int least, int most) =>
        (string text, out int value, [NotNullWhen(false)] out string? allowed) =>
        {
            bool good = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value)
                && value >= least && value <= most;
            allowed = good ? null : $"a whole number from {least} to {most}";
            return good;
        };
}
