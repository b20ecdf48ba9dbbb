using System.Globalization;
using PileController.Control.Readings;
using PileController.Panel.Now;
using PileController.Settings;

namespace PileController.Commissioning;

/// <summary>Figures and names as the sentences of a test write them.</summary>
internal static class Wording
{
    private const double FahrenheitPerKelvin = 1.8;

    /// <summary>A difference of temperature in both systems, with its sign.</summary>
    public static string Kelvin(double kelvin) => string.Create(
        CultureInfo.InvariantCulture, $"{kelvin:+0.00;-0.00;0.00} K ({kelvin * FahrenheitPerKelvin:+0.00;-0.00;0.00} °F)");

    /// <summary>An uncertainty of that.</summary>
    public static string PlusMinus(double kelvin) => string.Create(CultureInfo.InvariantCulture, $"± {kelvin:0.00} K (± {kelvin * FahrenheitPerKelvin:0.00} °F)");

    /// <summary>A share in per cent.</summary>
    public static string Share(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %");

    /// <summary>A number with so many digits behind the point at most.</summary>
    public static string Number(double value, int digits = 1) => Math.Round(value, digits).ToString(CultureInfo.InvariantCulture);

    /// <summary>What people call a probe of this place.</summary>
    public static string Probe(PileSettings settings, Channel channel) => ProbeWords.Label(settings.Rig.Probes, channel);

    /// <summary>Several names in a sentence.</summary>
    public static string All(IEnumerable<string> names) => string.Join(", ", names);
}
