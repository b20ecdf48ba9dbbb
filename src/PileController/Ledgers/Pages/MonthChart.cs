using System.Xml.Linq;
using PileController.Ledgers.Counting;
using PileController.Plans.Sketch;
using PileController.Units;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Ledgers.Pages;

/// <summary>Heat by month as bars, the band of the water's heat as a whisker.</summary>
internal static class MonthChart
{
    private const int MostMonths = 12;
    private const double High = 70;
    private const double Top = 30;
    private const double Step = 80;
    private const double Wide = 44;

    /// <summary>The chart; of a longer season its last twelve months.</summary>
    public static XElement Of(IReadOnlyList<SpanSum> months, UnitSystem u)
    {
        SpanSum[] shown = [.. months.TakeLast(MostMonths)];
        double most = Math.Max(1e-9, shown.Select(m => Math.Max(0, m.HeatKWh) + m.WaterErrorKWh).DefaultIfEmpty().Max());
        return new XElement(
            "svg", new XAttribute("class", "drawing"), new XAttribute("role", "img"),
            new XAttribute("viewBox", FormattableString.Invariant($"0 0 {MostMonths * Step} {Top + High + 24}")),
            El("title", "Heat by month"),
            shown.SelectMany((month, i) => Bar(month, i * Step, most, u)),
            Shape("line", "ground", ("x1", 0), ("x2", MostMonths * Step), ("y1", Top + High), ("y2", Top + High)));
    }

    /// <summary>The unit its numbers are in.</summary>
    public static string Unit(UnitSystem u) => Split(0, u).Unit;

    // Beside each other only the bare numbers have room.
    private static (string Number, string Unit) Split(double kilowattHours, UnitSystem u)
    {
        string text = PlanShow.Heat(kilowattHours, u);
        int at = text.IndexOf(' ', StringComparison.Ordinal);
        return (text[..at], text[(at + 1)..]);
    }

    private static IEnumerable<XElement> Bar(SpanSum month, double x, double most, UnitSystem u)
    {
        double YOf(double kWh) => Top + High - (High * Math.Clamp(kWh / most, 0, 1));
        double middle = x + (Step / 2);
        double top = YOf(month.HeatKWh);
        yield return Shape("rect", "heat-bar", ("x", middle - (Wide / 2)), ("y", top), ("width", Wide), ("height", Top + High - top));
        (double low, double high) = (YOf(month.HeatKWh - month.WaterErrorKWh), YOf(month.HeatKWh + month.WaterErrorKWh));
        yield return Shape("line", "whisker", ("x1", middle), ("x2", middle), ("y1", low), ("y2", high));
        foreach (double end in new[] { low, high })
        {
            yield return Shape("line", "whisker", ("x1", middle - 7), ("x2", middle + 7), ("y1", end), ("y2", end));
        }

        yield return Word("size-word", middle, high - 6, Split(month.HeatKWh, u).Number);
        yield return Word("size-word", middle, Top + High + 18, month.Span);
    }
}
