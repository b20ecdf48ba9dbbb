using PileController.Rigs;
using PileController.Rigs.Hardware;
using PileController.Settings.Fields;

namespace PileController.Settings.Checks;

/// <summary>What would move another actuator than meant, or the right one wrongly.</summary>
internal static class OutputChecks
{
    private const string Hardware = "rig.hardware";

    private static readonly (string Key, Func<HardwareSettings, LoadSettings> Load, string Line, Func<HardwareSettings, int?> LineOf)[] Loads =
    [
        ("pump", h => h.Pump, "pumpPin", h => h.PumpPin), ("blower", h => h.Blower, "blowerPin", h => h.BlowerPin),
    ];

    public static readonly Check[] All =
    [
        .. HardwareLines.All.Select((row, i) => new Check(
            [.. HardwareLines.All.Take(i + 1).Select(line => $"{Hardware}.{line.Setting}")], (s, _) => Twice(s.Rig.Hardware, row))),
        .. Loads.SelectMany(load => Of(load.Key, load.Load, load.Line, load.LineOf)),
        new([$"{Hardware}.pump", $"{Hardware}.blower"], OneChannelTwice),
        HardwareChecks.OnHardware(
            $"{Hardware}.backupLine", [$"{Hardware}.backupLine", "control.told.backupFitted"],
            s => s.Control.BackupFitted && s.Rig.Hardware.BackupLine is null,
            "the line of the backup heat, 0 to 127, or control.told.backupFitted false"),
    ];

    private static IEnumerable<Finding> Twice(HardwareSettings hardware, HardwareLine row) =>
        HardwareLines.Twice(hardware).Where(pair => pair.Line == row).Select(pair => new Finding(
            $"{Hardware}.{row.Setting}", $"{row.Line(hardware)}", $"another line than {Hardware}.{pair.Before.Setting}"));

    private static IEnumerable<Check> Of(string key, Func<HardwareSettings, LoadSettings> load, string line, Func<HardwareSettings, int?> lineOf)
    {
        string path = $"{Hardware}.{key}";
        LoadSettings Load(PileSettings settings) => load(settings.Rig.Hardware);
        yield return Check.That(
            $"{path}.least", [$"{path}.most"], s => Load(s).Least < Load(s).Most ? null : $"below {path}.most", s => $"{100 * Load(s).Least:G6} %");
        yield return Check.That(
            $"{path}.channel", [$"{path}.drive"],
            s => (Load(s).Drive, Load(s).Channel) switch
            {
                (LoadDrive.Line, null) => null,
                (LoadDrive.Line, _) => $"none while {path}.drive is \"line\"",
                (_, null) => "the channel of the PWM chip, a whole number",
                (LoadDrive.I2cPwm, >= HardwareLimits.I2cPwmChannels) => $"0 to {HardwareLimits.I2cPwmChannels - 1} on the I2C bus",
                _ => null,
            },
            s => $"{Load(s).Channel?.ToString() ?? "none"}");
        yield return Check.That(
            $"{path}.inverted", [$"{path}.drive", $"{Hardware}.{line}"],
            s => !Load(s).Inverted ? null
                : Load(s).Drive == LoadDrive.Line ? $"false while {path}.drive is \"line\"; a line has activeLow"
                : lineOf(s.Rig.Hardware) is null ? $"false, or {Hardware}.{line} with a relay in series: without a signal the device would run"
                : null,
            s => $"{Load(s).Inverted}".ToLowerInvariant());
        yield return Check.That(
            $"{Hardware}.pwmChip", [$"{path}.drive"],
            s => Load(s).Drive == LoadDrive.Pwm && s.Rig.Hardware.PwmChip is null ? $"the device of the PWM chip that {path} is driven by" : null,
            s => s.Rig.Hardware.PwmChip ?? "none");
    }

    private static IEnumerable<Finding> OneChannelTwice(PileSettings settings, FileReading reading)
    {
        (LoadSettings pump, LoadSettings blower) = (settings.Rig.Hardware.Pump, settings.Rig.Hardware.Blower);
        if (pump.Drive != LoadDrive.Line && pump.Drive == blower.Drive && pump.Channel is int channel && channel == blower.Channel)
        {
            yield return new Finding($"{Hardware}.blower.channel", $"{channel}", $"another channel than {Hardware}.pump.channel");
        }
    }
}
