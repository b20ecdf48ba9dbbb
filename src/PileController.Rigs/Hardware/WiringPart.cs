using PileController.Control.Readings;

namespace PileController.Rigs.Hardware;

/// <summary>One part of a probe's wiring: for which sources it has to be told, and for which it may be.</summary>
/// <param name="Key">Its key in the settings.</param>
/// <param name="Meaning">What it is, for whoever left it out.</param>
/// <param name="Given">What is given, as in the settings; null for nothing.</param>
/// <param name="IsWanted">Whether a probe of a source cannot do without it.</param>
/// <param name="IsWelcome">Whether a probe of a source can do with it.</param>
internal sealed record WiringPart(
    string Key, string Meaning, Func<ProbeWiring, string?> Given, Func<ProbeFit, ProbeSource, bool> IsWanted,
    Func<ProbeFit, ProbeSource, bool> IsWelcome)
{
    /// <summary>All parts.</summary>
    public static IReadOnlyList<WiringPart> All { get; } =
    [
        Needed("bus", "the number of the I2C bus, 0 to 255 (i2cdetect -l lists them)", w => $"{w.Bus}", (_, s) => SourceTable.IsOnI2c(s)),
        Needed("device", "the device's address on the I2C bus, \"0x08\" to \"0x77\"", w => w.Device is int d ? $"\"0x{d:x2}\"" : null, (_, s) => SourceTable.IsOnI2c(s)),
        Needed("input", "the converter's input, 0 to 3", w => $"{w.Input}", (_, s) => s == ProbeSource.Ads1115),
        Needed("sensor", "\"pt1000\" or \"ntc\"", w => w.Sensor is { } sensor ? $"\"{sensor.ToString().ToLowerInvariant()}\"" : null, (_, s) => s == ProbeSource.Ads1115),
        Needed("reference", "the resistor between excitation and input, \"2.2 kohm\"", w => Ohms(w.ReferenceOhms), (_, s) => s == ProbeSource.Ads1115),
        May("excitation", w => w.ExcitationVolts is { } volts ? $"{volts:G6} V" : null, s => s == ProbeSource.Ads1115),
        May("excitationInput", w => $"{w.ExcitationInput}", s => s == ProbeSource.Ads1115),
        Needed("resistanceAt25C", "the thermistor's resistance at 25 °C, \"10 kohm\"", w => Ohms(w.OhmsAt25C), (f, s) => IsNtc(f, s)),
        Needed("beta", "the thermistor's B value, \"3950 K\"", w => w.BetaKelvin is { } beta ? $"{beta:G6} K" : null, (f, s) => IsNtc(f, s)),
        new(
            "shunt", "the monitor's shunt, \"0.1 ohm\"", w => Ohms(w.ShuntOhms),
            (f, s) => s == ProbeSource.Ina219 && f.Channel != Channel.Battery, (_, s) => s == ProbeSource.Ina219),
        Needed("line", "the line of the GPIO chip, 0 to 127", w => $"{w.Line}", (_, s) => s is ProbeSource.Pulses or ProbeSource.Switch),
        Needed("wellWhen", "\"low\" or \"high\", the line's level while all is well", w => w.WellWhen is { } level ? $"\"{level.ToString().ToLowerInvariant()}\"" : null, (_, s) => s == ProbeSource.Switch),
        May("mostPulses", w => w.MostPulsesPerSecond is { } most ? $"{most:G6} 1/s" : null, s => s == ProbeSource.Pulses),
    ];

    private static WiringPart Needed(string key, string meaning, Func<ProbeWiring, string?> given, Func<ProbeFit, ProbeSource, bool> wanted) =>
        new(key, meaning, w => NullIfEmpty(given(w)), wanted, wanted);

    private static WiringPart May(string key, Func<ProbeWiring, string?> given, Func<ProbeSource, bool> welcome) =>
        new(key, "", w => NullIfEmpty(given(w)), (_, _) => false, (_, source) => welcome(source));

    private static string? NullIfEmpty(string? text) => string.IsNullOrEmpty(text) ? null : text;

    private static string? Ohms(double? ohms) => ohms is { } value ? $"{value:G6} ohm" : null;

    private static bool IsNtc(ProbeFit fit, ProbeSource source) => source == ProbeSource.Ads1115 && fit.Wiring.Sensor == ResistorKind.Ntc;
}
