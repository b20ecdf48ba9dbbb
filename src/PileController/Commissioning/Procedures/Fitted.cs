using System.Globalization;
using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>What a rig has that a test needs, and how its calibration is written.</summary>
internal static class Fitted
{
    /// <summary>The temperature probes, in the order of the settings.</summary>
    public static IReadOnlyList<Channel> Thermometers(PileSettings settings) =>
        [.. settings.Rig.Probes.Select(probe => probe.Channel).Where(channel => ChannelTable.Of(channel).Unit == "°C")];

    /// <summary>Whether a channel has a probe.</summary>
    public static bool Has(PileSettings settings, Channel channel) => settings.Rig.Probes.Any(probe => probe.Channel == channel);

    /// <summary>The offset a probe has now, K.</summary>
    public static double OffsetKelvin(PileSettings settings, Channel channel) =>
        settings.Rig.Probes.First(probe => probe.Channel == channel).OffsetKelvin;

    /// <summary>The line that gives a probe an offset; a list of probes is changed in the file only.</summary>
    public static SettingsLine OffsetLine(Channel channel, double kelvin) => new(
        $"rig.probes ({ChannelTable.Of(channel).Name}) offset", string.Create(CultureInfo.InvariantCulture, $"\"{kelvin:0.00} K\""), FromPage: false);

    /// <summary>Largest offset the settings take, K.</summary>
    public const double MostOffsetKelvin = 5;
}
