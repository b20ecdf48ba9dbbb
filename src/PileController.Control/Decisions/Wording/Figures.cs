using System.Globalization;

namespace PileController.Control.Decisions.Wording;

/// <summary>Writes figures into sentences, no finer than a grower needs them.</summary>
/// <param name="American">True for °F, BTU/h and gal/min.</param>
internal readonly record struct Figures(bool American)
{
    // NIST SP 811 (2008), appendix B.8: 1 Btu(IT)/h = 0.2930711 W, 1 US gallon = 3.785412 L (from memory).
    private const double WattsPerBtuHour = 0.2930711;
    private const double LitresPerGallon = 3.785412;

    public string Celsius(double celsius) => American
        ? string.Create(CultureInfo.InvariantCulture, $"{Zeroed((celsius * 1.8) + 32, 1):0.#} °F")
        : string.Create(CultureInfo.InvariantCulture, $"{Zeroed(celsius, 1):0.#} °C");

    public string Watts(double watts) => American ? Grouped(watts / WattsPerBtuHour) + " BTU/h" : Grouped(watts) + " W";

    public string Flow(double litresPerMinute) => American
        ? string.Create(CultureInfo.InvariantCulture, $"{Zeroed(litresPerMinute / LitresPerGallon, 2):0.00} gal/min")
        : string.Create(CultureInfo.InvariantCulture, $"{Zeroed(litresPerMinute, 1):0.0} L/min");

    /// <summary>A duty or opening of 0 to 1.</summary>
    public static string Share(double share) => string.Create(CultureInfo.InvariantCulture, $"{share * 100:0} %");

    // Tens are fine enough for a heat flow; below a hundred, ones. Thousands stand apart by a space in either system, as
    // everywhere else: a comma is a decimal point to half of the readers.
    private static string Grouped(double value)
    {
        double grain = Math.Abs(value) < 99.5 ? 1 : 10;
        double rounded = Math.Round(value / grain, MidpointRounding.AwayFromZero) * grain;
        string text = Zeroed(rounded, 0).ToString("#,##0", CultureInfo.InvariantCulture);
        return text.Replace(',', ' ');
    }

    // "-0.0" is noise to a reader.
    private static double Zeroed(double value, int digits)
    {
        double rounded = Math.Round(value, digits, MidpointRounding.AwayFromZero);
        return rounded == 0 ? 0 : rounded;
    }
}
