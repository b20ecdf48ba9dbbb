using System.Globalization;

namespace PileController.Units;

/// <summary>Writes values for people, in the units they chose. Machines get SI numbers instead.</summary>
public static class Show
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    /// <summary>A temperature.</summary>
    /// <param name="celsius">°C.</param>
    /// <param name="system">Units to show.</param>
    public static string Temperature(double celsius, UnitSystem system) =>
        Of(celsius, "°C", Dimension.Temperature, system, ("°C", "F1"), ("°F", "F1"));

    /// <summary>A temperature difference.</summary>
    /// <param name="kelvin">K.</param>
    /// <param name="system">Units to show.</param>
    public static string Difference(double kelvin, UnitSystem system) =>
        Of(kelvin, "K", Dimension.TemperatureDifference, system, ("K", "F1"), ("°F", "F1"));

    /// <summary>A power or heat flow.</summary>
    /// <param name="watts">W.</param>
    /// <param name="system">Units to show.</param>
    public static string Power(double watts, UnitSystem system) =>
        Of(watts, "W", Dimension.Power, system, Math.Abs(watts) < 9999.5 ? ("W", "F0") : ("kW", "F2"), ("BTU/h", "F0"));

    /// <summary>An amount of heat.</summary>
    /// <param name="kilowattHours">kWh.</param>
    /// <param name="system">Units to show.</param>
    public static string Energy(double kilowattHours, UnitSystem system) =>
        Of(kilowattHours, "kWh", Dimension.Energy, system, ("kWh", "F2"), ("BTU", "F0"));

    /// <summary>A flow of water.</summary>
    /// <param name="litresPerMinute">L/min.</param>
    /// <param name="system">Units to show.</param>
    public static string WaterFlow(double litresPerMinute, UnitSystem system) =>
        Of(litresPerMinute, "L/min", Dimension.Flow, system, ("L/min", "F2"), ("gal/min", "F2"));

    /// <summary>A flow of air.</summary>
    /// <param name="cubicMetresPerSecond">m³/s.</param>
    /// <param name="system">Units to show.</param>
    public static string AirFlow(double cubicMetresPerSecond, UnitSystem system) =>
        Of(cubicMetresPerSecond, "m3/s", Dimension.Flow, system, ("m3/h", "F0"), ("ft3/min", "F0"));

    /// <summary>A length.</summary>
    /// <param name="metres">m.</param>
    /// <param name="system">Units to show.</param>
    public static string Length(double metres, UnitSystem system) =>
        Of(metres, "m", Dimension.Length, system, ("m", "F2"), ("ft", "F1"));

    /// <summary>A volume of water.</summary>
    /// <param name="litres">L.</param>
    /// <param name="system">Units to show.</param>
    public static string Volume(double litres, UnitSystem system) =>
        Of(litres, "L", Dimension.Volume, system, ("L", "F0"), ("gal", "F0"));

    /// <summary>A mass.</summary>
    /// <param name="kilograms">kg.</param>
    /// <param name="system">Units to show.</param>
    public static string Mass(double kilograms, UnitSystem system) =>
        Of(kilograms, "kg", Dimension.Mass, system, ("kg", "F0"), ("lb", "F0"));

    /// <summary>A length of time, in the unit in which people would say it; the same in both systems.</summary>
    /// <param name="seconds">s.</param>
    public static string Time(double seconds) => Math.Abs(seconds) switch
    {
        < 120 => $"{seconds.ToString("0.#", Plain)} s",
        < 7200 => $"{(seconds / 60).ToString("0.#", Plain)} min",
        < 172_800 => $"{(seconds / 3600).ToString("0.#", Plain)} h",
        _ => $"{(seconds / 86_400).ToString("0.#", Plain)} d",
    };

    /// <summary>One text in both systems, metric first: "60.0 °C (140.0 °F)".</summary>
    /// <param name="show">Any of the methods here with its value.</param>
    public static string Both(Func<UnitSystem, string> show) => $"{show(UnitSystem.Metric)} ({show(UnitSystem.Us)})";

    private static string Of(
        double value, string stored, Dimension dimension, UnitSystem system,
        (string Symbol, string Format) metric, (string Symbol, string Format) us)
    {
        if (!double.IsFinite(value))
        {
            return "—";
        }

        (string symbol, string format) = system == UnitSystem.Metric ? metric : us;
        double shown = Conversion.Of(value, UnitTable.Of(stored, dimension), UnitTable.Of(symbol, dimension));
        string text = shown.ToString(format, Plain);

        // "-0.0" is noise to a reader.
        return $"{(double.Parse(text, Plain) == 0 ? text.TrimStart('-') : text)} {symbol}";
    }
}
