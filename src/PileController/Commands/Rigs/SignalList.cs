using System.Globalization;
using PileController.Rigs;

namespace PileController.Commands.Rigs;

/// <summary>The PWM channels that loads hang on, told from the settings.</summary>
internal static class SignalList
{
    /// <summary>The channels in use, the pump's first.</summary>
    public static IReadOnlyList<Signal> Of(HardwareSettings hardware) =>
    [
        .. new[] { ("loop pump", "rig.hardware.pump", hardware.Pump), ("duct blower", "rig.hardware.blower", hardware.Blower) }
            .Where(row => row.Item3.Drive != LoadDrive.Line)
            .Select(row => Of(row.Item1, row.Item2, row.Item3, hardware)),
    ];

    private static Signal Of(string function, string setting, LoadSettings load, HardwareSettings hardware)
    {
        bool onBus = load.Drive == LoadDrive.I2cPwm;
        string chip = onBus
            ? string.Create(CultureInfo.InvariantCulture, $"0x{hardware.I2cPwm.Address:x2} on I2C bus {hardware.I2cPwm.Bus}")
            : hardware.PwmChip ?? "none";
        double hertz = onBus ? hardware.I2cPwm.FrequencyHz : load.FrequencyHz;
        return new Signal(function, chip, load.Channel ?? 0, hertz, load.Least, load.Most, load.Inverted, setting);
    }
}

/// <summary>One PWM channel in use.</summary>
/// <param name="Function">What it is for.</param>
/// <param name="Chip">The chip: its device, or its address and bus.</param>
/// <param name="Channel">Its number on the chip.</param>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="Least">Signal at the least duty above 0.</param>
/// <param name="Most">Signal at full duty.</param>
/// <param name="Inverted">Whether a full signal stops the load.</param>
/// <param name="Setting">The section that gives it.</param>
internal sealed record Signal(
    string Function, string Chip, int Channel, double FrequencyHz, double Least, double Most, bool Inverted, string Setting)
{
    /// <summary>The channel in a sentence.</summary>
    public string Sentence => string.Create(
        CultureInfo.InvariantCulture,
        $"PWM channel {Channel} of {Chip}: {Function}, {FrequencyHz:0.#} Hz, {Signalled(Least)} to {Signalled(Most)}, safe {Signalled(0)}{(Inverted ? " with its relay off" : "")}.");

    private string Signalled(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * (Inverted ? 1 - share : share):0.#} %");
}
