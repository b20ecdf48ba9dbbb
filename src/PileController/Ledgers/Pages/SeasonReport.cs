using System.Globalization;
using System.Xml.Linq;
using PileController.Plans.Sketch.Sheet;
using PileController.Units;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Ledgers.Pages;

/// <summary>One printable page of a season. What does not fit on it is counted and stays in the book.</summary>
internal static class SeasonReport
{
    private const int MostParts = 6;
    private const int MostNotes = 3;
    private const int MostLetters = 80;
    private const int MostNameLetters = 20;
    private const int MostPartLetters = 30;
    private const int MostEarlier = 2;

    /// <summary>The page.</summary>
    /// <param name="view">The book.</param>
    /// <param name="season">The season.</param>
    /// <param name="u">Units to show.</param>
    /// <param name="embedStyle">True for a file that stands by itself; false for the panel, whose rules let no style stand in the page.</param>
    public static string Html(LedgerView view, SeasonEntry season, UnitSystem u, bool embedStyle)
    {
        LedgerPage page = LedgerPage.Of(view, season);
        Lessons? lessons = season.Closed?.Lessons;
        return PrintedPage.Html(
            Clean($"{Short(season.Name, MostPartLetters)}: a season at {view.Settings.Site.Name}"), embedStyle,
            El("p", Span(page)),
            Part($"Heat by month, {MonthChart.Unit(u)}", MonthChart.Of(page.Months, u), El("p", "The whisker is the error band of the heat by water; nothing cancels in it.")),
            Class(
                "columns tight", "div",
                Part("The season", Rows(LedgerWords.Rows(page.Total, u))),
                Part("Money", Rows(LedgerWords.Rows(page.Money!).Select(r => (r.Name, Clean(r.Value)))), El("p", SeasonMoney.Why)),
                Part("Mass", Rows([("In, wet", Clean(Short(LedgerWords.Mass(season.Mass(MassWay.In), u)))), ("Out", Clean(Short(LedgerWords.Mass(season.Mass(MassWay.Out), u))))])),
                Parts(season, page.Money!.Money), Notes(season),
                lessons is null ? El("p", "Lessons are drawn when the season is closed.") : Part("Lessons", Rows(LedgerWords.Rows(lessons, u)))),
            Earlier(view, season, u),
            Class("small", "p", string.Join(" ", LedgerPage.Reading)));
    }

    private static string Span(LedgerPage page)
    {
        SeasonEntry season = page.Season!;
        string end = season.Closed is { } closed
            ? $"closed on {closed.On:yyyy-MM-dd} by {Short(closed.By.Who, MostNameLetters)}"
            : "still open: its figures are those so far";
        return Clean($"Heap built on {season.HeapBuiltOn:yyyy-MM-dd}, {end}.");
    }

    private static XElement Parts(SeasonEntry season, string money)
    {
        IEnumerable<string> lines = season.Parts.Take(MostParts).Select(p =>
            $"{p.Count.ToString("0.##", CultureInfo.InvariantCulture)} × {Short(p.Name, MostPartLetters)}, {LedgerWords.Money(p.PriceEach, money)} each, {(p.Reused ? "reused" : "bought")}");
        return Part("Parts", season.Parts.Count == 0 ? El("p", "None entered.") : Listed(lines), More(season.Parts.Count - MostParts, "parts"));
    }

    private static XElement Notes(SeasonEntry season) => Part(
        "Notes",
        season.Notes.Count == 0
            ? El("p", "None written.")
            : Listed(season.Notes.TakeLast(MostNotes).Select(n =>
                $"{DateTimeOffset.FromUnixTimeMilliseconds(n.By.AtUtcMilliseconds):yyyy-MM-dd}, {Short(n.By.Who, MostNameLetters)}: {Short(n.Text)}")),
        More(season.Notes.Count - MostNotes, "earlier notes"));

    private static XElement Earlier(LedgerView view, SeasonEntry season, UnitSystem u)
    {
        SeasonBeside[] earlier = [.. SeasonBeside.All(view).Where(s => s.HeapBuiltOn < season.HeapBuiltOn).TakeLast(MostEarlier)];
        if (earlier.Length == 0)
        {
            return Part("Earlier seasons", El("p", "The book holds none."));
        }

        XElement Row(string name, Func<SeasonBeside, string> of) => new(
            "tr", new XElement("th", new XAttribute("scope", "row"), name), earlier.Select(s => El("td", Clean(of(s)))));
        return Part("Earlier seasons", new XElement("table", new XElement(
            "tbody",
            Row("Season", s => Short(s.Name, MostNameLetters)),
            Row("Heat by water", s => LedgerWords.Water(s.Total, u)),
            Row("Saved", s => LedgerWords.Money(s.Money.Saved, s.Money.Money)),
            Row("Below its floor", s => LedgerWords.Hours(s.Total.BelowFloorHours)),
            Row("Nights kept", s => $"{s.Total.NightsKept} of {s.Total.Nights}"),
            Row("Past its best", s => s.Fading.FadedOn is { } faded ? $"{faded:yyyy-MM-dd}" : "not seen"))));
    }

    private static XElement Listed(IEnumerable<string> lines) => new("ul", lines.Select(line => El("li", Clean(line))));

    private static XElement? More(int count, string what) => count > 0 ? El("p", $"{count} {what} more stand in the book.") : null;

    // Cut between characters, never within one.
    private static string Short(string text, int most = MostLetters)
    {
        StringInfo whole = new(text);
        return whole.LengthInTextElements > most ? whole.SubstringByTextElements(0, most - 1) + "…" : text;
    }
}
