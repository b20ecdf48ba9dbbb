using System.CommandLine;
using PileController.Commands.Running;
using PileController.Commands.Shell;
using PileController.Ledgers;
using PileController.Ledgers.Counting;
using PileController.Ledgers.Editing;
using PileController.Ledgers.Pages;
using PileController.Units;

namespace PileController.Commands.Ledgers;

/// <summary>ledger show: a season by its days, its months or as a whole.</summary>
internal static class LedgerShow
{
    private const string ByDays = "days";
    private const string ByMonths = "months";
    private const string Whole = "season";

    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<string> By = Ask.Word("--by", "How finely; the season as a whole when left out:", [(ByDays, ByDays), (ByMonths, ByMonths), (Whole, Whole)]).Unless(Whole);
    private static readonly Option<string?> Season = LedgerAsk.Season();
    private static readonly Option<string?> Settings = LedgerAsk.Settings();
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("show", "Heat, electricity, nights and money of a season.", "PileController ledger show --data DIR --by months")
        {
            Data, By, Season, Settings, Json,
        };
        command.SetAction((parse, _) => LedgerAsk.LookAsync(parse, Data, Settings, view => Tell(parse, view)));
        return command;
    }

    private static int Tell(ParseResult parse, LedgerView view)
    {
        string? name = parse.GetValue(Season);
        LedgerPage page = LedgerPage.Of(view, name is null && view.Book.Seasons.Count == 0 ? null : EntryEdits.Find(view.Book, name));
        if (parse.GetValue(Json))
        {
            LedgerAsk.WriteJson(parse, page);
        }
        else if (parse.GetValue(By) == Whole)
        {
            WriteWhole(parse, page, view.Settings.Units);
        }
        else
        {
            WriteSpans(parse.InvocationConfiguration.Output, parse.GetValue(By) == ByDays ? page.Days : page.Months, view);
        }

        return ExitCodes.Done;
    }

    private static void WriteWhole(ParseResult parse, LedgerPage page, UnitSystem u)
    {
        TextWriter output = parse.InvocationConfiguration.Output;
        output.WriteLine(page.Season is { } season
            ? $"{season.Name}: heap built on {season.HeapBuiltOn:yyyy-MM-dd}, {(season.Closed is { } closed ? $"closed on {closed.On:yyyy-MM-dd}" : "open")}"
            : "No season is in the book; all days that were counted:");
        Answer.WriteRows(parse, LedgerWords.Rows(page.Total, u));
        if (page is { Season: { } told, Money: { } money })
        {
            Answer.WriteRows(parse, [.. LedgerWords.Rows(money), ("Mass in, wet", LedgerWords.Mass(told.Mass(MassWay.In), u)), ("Mass out", LedgerWords.Mass(told.Mass(MassWay.Out), u))]);
            output.WriteLine(SeasonMoney.Why);
            WriteWritten(output, told);
            if (told.Closed?.Lessons is { } lessons)
            {
                output.WriteLine("Lessons");
                Answer.WriteRows(parse, LedgerWords.Rows(lessons, u));
            }
        }

        foreach (string sentence in page.ReadThus)
        {
            output.WriteLine(sentence);
        }
    }

    private static void WriteWritten(TextWriter output, SeasonEntry season)
    {
        foreach (PartEntry part in season.Parts)
        {
            output.WriteLine($"Part: {part.Name}, {part.Count:0.##} at {LedgerWords.Money(part.PriceEach, season.Fuel.Money)}, {(part.Reused ? "reused" : "bought")}");
        }

        foreach (NoteEntry note in season.Notes)
        {
            output.WriteLine($"Note: {DateTimeOffset.FromUnixTimeMilliseconds(note.By.AtUtcMilliseconds):yyyy-MM-dd HH:mm}Z, {note.By.Who}: {note.Text}");
        }
    }

    private static void WriteSpans(TextWriter output, IReadOnlyList<SpanSum> spans, LedgerView view)
    {
        UnitSystem u = view.Settings.Units;
        foreach (SpanSum span in spans)
        {
            output.WriteLine(
                $"{span.Span}  water {LedgerWords.Water(span, u)}, air {LedgerWords.Heat(span.AirKWh, u)}, electricity {LedgerWords.Electricity(span.ElectricityKWh)}, "
                + $"{Show.Volume(span.Litres, u)}, inferred {LedgerWords.Hours(span.InferredHours)}; counted from {Moment(span.FromUtcMs, view)} to {Moment(span.ToUtcMs, view)}");
        }
    }

    private static string Moment(long utcMilliseconds, LedgerView view)
    {
        TimeSpan offset = TimeSpan.FromMinutes(LedgerRules.Of(view.Settings).OffsetMinutesAt(utcMilliseconds));
        return DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds).ToOffset(offset).ToString("yyyy-MM-dd HH:mm:ss zzz");
    }
}
