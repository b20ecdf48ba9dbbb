using System.Globalization;
using PileController.Units;

namespace PileController.Plans.Sketch;

/// <summary>Writes the amounts a plan speaks of: seasons of heat, heaps of chips, bores of pipe.</summary>
internal static class PlanShow
{
    // A bore is told finer than a blanket.
    private const double FineBelowM = 0.03;

    /// <summary>A season's heat: "1319 kWh", "4.50 million BTU".</summary>
    public static string Heat(double kilowattHours, UnitSystem u) => u == UnitSystem.Metric
        ? Number(Math.Round(kilowattHours) + 0.0, "F0", "kWh")
        : Number(Math.Round(To(kilowattHours, "kWh", "BTU", Dimension.Energy) / 1e6, 2) + 0.0, "F2", "million BTU");

    /// <summary>Heat of a kilogram: "17.0 MJ/kg", "7309 BTU/lb".</summary>
    public static string HeatOfMass(double joulesPerKg, UnitSystem u) => u == UnitSystem.Metric
        ? Number(joulesPerKg / 1e6, "F1", "MJ/kg")
        : Number(To(joulesPerKg, "J", "BTU", Dimension.Energy) / To(1, "kg", "lb", Dimension.Mass), "F0", "BTU/lb");

    /// <summary>Chips by the barrow: m³ or cubic yards.</summary>
    public static string Bulk(double cubicMetres, UnitSystem u) => u == UnitSystem.Metric
        ? Number(cubicMetres, "F1", "m³")
        : Number(To(cubicMetres, "m3", "yd3", Dimension.Volume), "F1", "yd³");

    /// <summary>A thickness or bore: mm or inches.</summary>
    public static string Small(double metres, UnitSystem u) => u == UnitSystem.Metric
        ? Number(1000 * metres, metres < FineBelowM ? "F1" : "F0", "mm")
        : Number(To(metres, "m", "in", Dimension.Length), metres < FineBelowM ? "F3" : "F1", "in");

    /// <summary>Heat by the degree.</summary>
    public static string PerDegree(double wattsPerKelvin, UnitSystem u) => u == UnitSystem.Metric
        ? Number(wattsPerKelvin, "F0", "W/K")
        : Number(To(wattsPerKelvin, "W/K", "BTU/h°F", Dimension.Conductance), "F0", "BTU/h per °F");

    private static double To(double value, string from, string to, Dimension dimension) =>
        Conversion.Of(value, UnitTable.Of(from, dimension), UnitTable.Of(to, dimension));

    private static string Number(double value, string format, string unit) =>
        $"{value.ToString(format, CultureInfo.InvariantCulture)} {unit}";
}
