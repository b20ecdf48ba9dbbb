using System.Globalization;
using System.Xml.Linq;
using PileController.Plans.Sketch.Sheet;
using PileController.Settings;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Commissioning.Sheets;

/// <summary>The commissioning sheet as one page to print.</summary>
internal static class SheetPage
{
    /// <summary>The page.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="settings">The holding.</param>
    /// <param name="embedStyle">True for a file that stands by itself; false for the panel, whose rules let no style stand in the page.</param>
    public static string Html(Sheet sheet, PileSettings settings, bool embedStyle) => PrintedPage.Html(
        $"Commissioning sheet: {Clean(settings.Site.Name)}", embedStyle,
        El("p", sheet.Entries.Count == 0
            ? "Nothing has been kept on this sheet yet."
            : "What was proven, newest first of each test. Uncertainties are expanded ones (k = 2)."),
        Catalogue.Ids.Select(id => Newest(sheet, id, settings)),
        sheet.Entries.Count == 0 ? null : Part("All tests that were kept", All(sheet, settings)),
        Part("Signed", Rows([("Commissioned by", "…………………………"), ("Date", "…………………………"), ("Electrician, where mains is involved", "…………………………")])));

    private static XElement? Newest(Sheet sheet, string id, PileSettings settings) =>
        sheet.Entries.LastOrDefault(entry => entry.Test == id) is { } entry
            ? Part(Clean(entry.Title), El("p", Signed(entry, settings)), Rows(entry.Outcomes.SelectMany(Told)))
            : null;

    private static IEnumerable<(string Name, string Value)> Told(Outcome outcome)
    {
        yield return (Clean($"{outcome.Subject}: {Word(outcome.Verdict)}"), Clean(outcome.Sentence));
        foreach (SettingsLine line in outcome.Adopt)
        {
            yield return (Clean(line.Path), Clean(line.Json));
        }
    }

    private static XElement All(Sheet sheet, PileSettings settings) => Rows(sheet.Entries.Reverse().Select(entry =>
        (Clean($"{When(entry, settings)}: {entry.Title}"), Clean($"{string.Join(", ", entry.Outcomes.Select(one => $"{one.Subject} {Word(one.Verdict)}"))}; {entry.By.Who}"))));

    private static string Signed(SheetEntry entry, PileSettings settings) =>
        Clean($"{When(entry, settings)}, kept by {entry.By.Who} ({entry.By.From}){(entry.Simulated ? "; the rig was simulated" : "")}.");

    private static string When(SheetEntry entry, PileSettings settings)
    {
        int minutes = settings.Site.OffsetMinutesAt(entry.By.AtUtcMilliseconds);
        return DateTimeOffset.FromUnixTimeMilliseconds(entry.By.AtUtcMilliseconds).ToOffset(TimeSpan.FromMinutes(minutes)).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }

    private static string Word(Soundness verdict) => verdict switch
    {
        Soundness.Sound => "sound",
        Soundness.Doubtful => "doubtful",
        _ => "failed",
    };
}
