using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using PileController.Commands.Shell;
using PileController.Ledgers;
using PileController.Plans.Ahead;
using PileController.Plans.Sketch;
using PileController.Plans.Sketch.Sheet;
using PileController.Settings;

namespace PileController.Commands.Running;

/// <summary>plan: what the winter ahead may bring, before anything is built.</summary>
internal static class PlanCommand
{
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file; Alder Bank's when left out." };

    private static readonly Option<string[]> Weather = new("--weather")
    {
        Description = "Weather: hourly CSV, daily CSV or EPW, one file or several; every winter they cover is used. The demo's when left out.",
        AllowMultipleArgumentsPerToken = true,
    };

    private static readonly Option<int> Seasons = Ask.Whole("--seasons", "How many seasons are drawn, 1 to 5000; 200 when left out.", 1, 5000).Unless(200);
    private static readonly Option<int> Days = Ask.Whole("--days", "How long a season is, 1 to 365 days; 150 when left out.", 1, 365).Unless(150);
    private static readonly Option<DateOnly> Start = Ask.Of<DateOnly>("--start", "Day of the year on which it begins, as 11-01; that when left out.", ReadDay).Unless(new DateOnly(2001, 11, 1));
    private static readonly Option<int> Seed = Ask.Whole("--seed", "Seed of all that is drawn, 0 to 1000000; 1 when left out.", 0, 1_000_000).Unless(1);
    private static readonly Option<int> CheckTick = Ask.Whole("--check-tick", "Run this many seasons, 1 to 100, in full and in planning steps and tell how far they differ, instead.", 1, 100).Unless(0);
    private static readonly Option<string?> Sheet = new("--sheet") { Description = "Write a printable page to build by to this file, HTML." };
    private static readonly Option<string?> LessonsFrom = new("--lessons") { Description = "Folder of a book: tells what its last closed season taught of heap and house. Nothing of it is applied." };
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "plan", "Says what the winter ahead may bring: heat, coldest night, when the heap lights and fades, money.",
            "PileController plan --weather tests/Weather/new-york-daily-2012-2013.csv --weather tests/Weather/seattle-daily-2012-2015.csv --seasons 200")
        {
            SettingsPath, Weather, Seasons, Days, Start, Seed, CheckTick, Sheet, LessonsFrom, Json,
        };
        command.SetAction(RunAsync);
        return command;
    }

    private static async Task<int> RunAsync(ParseResult parse, CancellationToken cancellation)
    {
        if (SettingsSource.Sound(parse, SettingsPath) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        if (!TryLessons(parse, out Lessons? lessons))
        {
            return ExitCodes.WrongUse;
        }

        DateOnly start = parse.GetValue(Start);
        PlanWinters.Span span = new(start.Month, start.Day, parse.GetValue(Days));
        if (PlanWinters.Read(parse.GetValue(Weather) ?? [], settings, span, parse.InvocationConfiguration.Error) is not { } winters)
        {
            return ExitCodes.WrongUse;
        }

        AheadRequest request = new(settings, winters, parse.GetValue(Seasons), span.Days, parse.GetValue(Seed));
        if (parse.GetValue(CheckTick) is > 0 and int compared)
        {
            TickCheckText.Write(parse, request, compared, parse.GetValue(Json), cancellation);
            return ExitCodes.Done;
        }

        // Computing comes after the sheet: a path that cannot be written is told at once, not after minutes.
        PlanSketch sketch = PlanSketching.Of(settings, winters[0].Weather, winters[0].Start, span.Days);
        if (parse.GetValue(Sheet) is { } path && !await WriteSheetAsync(path, settings, sketch, parse.InvocationConfiguration.Error, cancellation))
        {
            return ExitCodes.WrongUse;
        }

        PlanAnswer answer = PlanAnswer.Of(request, sketch, await SeasonAhead.RunAsync(
            request, Environment.ProcessorCount, Progress(request.Seasons), cancellation), lessons);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, answer);
        }
        else
        {
            PlanText.Write(parse, answer, settings.Units);
        }

        return ExitCodes.Done;
    }

    // The book alone is read: a record that runs meanwhile is not in the way.
    private static bool TryLessons(ParseResult parse, out Lessons? lessons)
    {
        lessons = null;
        if (parse.GetValue(LessonsFrom) is not { } folder)
        {
            return true;
        }

        string? problem;
        try
        {
            lessons = new BookFile(folder).Read().Seasons.LastOrDefault(s => s.Closed?.Lessons is not null)?.Closed!.Lessons;
            problem = lessons is null ? "no season in it was closed with lessons" : null;
        }
        catch (BookFileException e)
        {
            problem = e.Message.TrimEnd('.');
        }

        if (problem is not null)
        {
            parse.InvocationConfiguration.Error.WriteLine($"{LessonsFrom.Name} is \"{folder}\": {problem}; allowed: the folder of a book with a closed season");
        }

        return problem is null;
    }

    private static async Task<bool> WriteSheetAsync(
        string path, PileSettings settings, PlanSketch sketch, TextWriter error, CancellationToken cancellation)
    {
        try
        {
            await File.WriteAllTextAsync(path, BuildSheet.Html(settings, sketch, embedStyle: true), cancellation);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            error.WriteLine($"{Sheet.Name} is \"{path}\": {e.Message.TrimEnd('.')}; allowed: the path of a file that can be written");
            return false;
        }
    }

    // Long work shows progress on a terminal and none when piped.
    private static Action<int>? Progress(int seasons) => Console.IsErrorRedirected
        ? null
        : done => Console.Error.Write(done >= seasons ? "\r                              \r" : $"\r{done} of {seasons} seasons ");

    private static bool ReadDay(string text, out DateOnly value, [NotNullWhen(false)] out string? allowed)
    {
        bool good = DateOnly.TryParseExact($"2001-{text}", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out value);
        allowed = good ? null : "a month and a day as 11-01";
        return good;
    }
}
