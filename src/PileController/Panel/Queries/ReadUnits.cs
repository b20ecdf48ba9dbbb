using PileController.Records;
using PileController.Units;

namespace PileController.Panel.Queries;

/// <summary>Series in the units a person reads, as the page shows them (js/units.js). Machines are answered in SI.</summary>
internal static class ReadUnits
{
    // Power that is no heat: watts in either system.
    private static readonly string[] Electric = ["pumpPower", "blowerPower"];

    private static readonly (string Wire, string Read, Dimension Dimension)[] American =
        [("°C", "°F", Dimension.Temperature), ("W", "BTU/h", Dimension.Power), ("L/min", "gal/min", Dimension.Flow)];

    /// <summary>The same series in the units of a system.</summary>
    public static IReadOnlyList<(string Name, string Unit, IReadOnlyList<SeriesPoint> Points)> Of(
        IReadOnlyList<(string Name, string Unit, IReadOnlyList<SeriesPoint> Points)> series, PanelUnits units) =>
        units == PanelUnits.Metric ? series : [.. series.Select(one => InAmerican(one.Name, one.Unit, one.Points))];

    private static (string Name, string Unit, IReadOnlyList<SeriesPoint> Points) InAmerican(
        string name, string unit, IReadOnlyList<SeriesPoint> points)
    {
        (string wire, string read, Dimension dimension) = American.FirstOrDefault(row => row.Wire == unit);
        if (wire is null || Electric.Contains(name))
        {
            return (name, unit, points);
        }

        Unit from = UnitTable.Of(wire, dimension);
        Unit to = UnitTable.Of(read, dimension);
        double? Read(double? value) => value is { } number ? Conversion.Of(number, from, to) : null;
        return (name, read, [.. points.Select(point => point with { Least = Read(point.Least), Mean = Read(point.Mean), Most = Read(point.Most) })]);
    }
}
