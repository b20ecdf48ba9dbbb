using System.Globalization;
using PileController.Units;

namespace PileController.Panel.Sight;

/// <summary>Writes figures as the page's scripts do (js/units.js), so that nothing moves when they take over.</summary>
/// <param name="american">True for °F, BTU/h and kBTU; false for °C, W and kWh.</param>
/// <param name="thousands">What stands between the thousands.</param>
internal sealed class SightFigures(bool american, string thousands)
{
    private const string Dash = "–";
    private readonly NumberFormatInfo _format = new() { NumberGroupSeparator = thousands };

    /// <summary>The unit of temperatures.</summary>
    public string TemperatureUnit => american ? "°F" : "°C";

    /// <summary>A temperature without its unit; a dash for null.</summary>
    public string BareTemperature(double? celsius) => celsius is { } value ? Written(Temperature(value), "N1") : Dash;

    /// <summary>A temperature.</summary>
    public string OfTemperature(double? celsius) => With(BareTemperature(celsius), TemperatureUnit);

    /// <summary>A temperature difference.</summary>
    public string OfKelvin(double? kelvin) => Of(kelvin, american ? 1.8 : 1, "N1", american ? "°F" : "K");

    /// <summary>A power.</summary>
    public string OfPower(double? watts) => Of(watts, american ? PowerFactor : 1, "N0", american ? "BTU/h" : "W");

    /// <summary>An amount of heat.</summary>
    public string OfEnergy(double? kilowattHours) => Of(kilowattHours, american ? PowerFactor : 1, "N1", american ? "kBTU" : "kWh");

    // 1 W is as many BTU/h as 1 kWh is kBTU.
    private static double PowerFactor => Conversion.Of(1, UnitTable.Of("W", Dimension.Power), UnitTable.Of("BTU/h", Dimension.Power));

    private double Temperature(double celsius) => american ? (celsius * 1.8) + 32 : celsius;

    private string Of(double? value, double factor, string format, string unit) =>
        value is { } number ? With(Written(number * factor, format), unit) : Dash;

    private string Written(double value, string format) => value.ToString(format, _format).Replace('-', '−');

    private static string With(string figure, string unit) => figure == Dash ? figure : $"{figure}\u00a0{unit}";
}
