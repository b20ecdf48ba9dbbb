using System.Globalization;
using PileController.Control.Readings;

namespace PileController.Rigs.Hardware;

/// <summary>
/// Whether the outputs of one wiring may be made safe while a rig is wired by another: a line that is switched off for one
/// must not be a sensor's, or mean on, for the other.
/// </summary>
public static class OutputClash
{
    // Off is off, whichever of these a line belongs to. The valve's lines are run, so they have to be the same.
    private static readonly string[] Switched = ["pumpPin", "blowerPin", "backupLine", "lampLine"];

    /// <summary>The first output of a wiring that meets something else of the other.</summary>
    /// <param name="wired">How the rig is wired.</param>
    /// <param name="told">The wiring whose outputs are to be made safe.</param>
    /// <returns>In words, without an end: "rig.hardware.pumpPin is 24, which the rig has as rig.probes[9].line"; null when there is none.</returns>
    public static string? Find(RigSettings wired, HardwareSettings told) => Line(wired, told) ?? Chip(wired, told);

    private static string? Line(RigSettings wired, HardwareSettings told)
    {
        if (wired.Hardware.GpioChipLabel != told.GpioChipLabel)
        {
            return null;
        }

        foreach (HardwareLine row in HardwareLines.All.Where(row => IsMoved(row.Setting)))
        {
            if (row.Line(told) is not { } line || Owner(wired, line) is not { } owner)
            {
                continue;
            }

            if (owner != row.Setting && !(Switched.Contains(owner) && Switched.Contains(row.Setting)))
            {
                return string.Create(CultureInfo.InvariantCulture, $"rig.hardware.{row.Setting} is {line}, which the rig has as {Path(owner)}");
            }

            if (wired.Hardware.ActiveLow != told.ActiveLow)
            {
                return $"rig.hardware.activeLow is {Word(told.ActiveLow)}, and the rig has it {Word(wired.Hardware.ActiveLow)}";
            }
        }

        return null;
    }

    private static string? Chip(RigSettings wired, HardwareSettings told)
    {
        if (told.Pump.Drive != LoadDrive.I2cPwm && told.Blower.Drive != LoadDrive.I2cPwm)
        {
            return null;
        }

        ProbeFit? probe = wired.Probes.FirstOrDefault(fit => fit.Wiring.Device == told.I2cPwm.Address && fit.Wiring.Bus == told.I2cPwm.Bus);
        return probe is null
            ? null
            : $"rig.hardware.i2cPwm.address is 0x{told.I2cPwm.Address:x2} on bus {told.I2cPwm.Bus}, where the rig has the probe {ChannelTable.Of(probe.Channel).Name}";
    }

    private static bool IsMoved(string setting) => Switched.Contains(setting) || setting.StartsWith("valve.", StringComparison.Ordinal);

    private static string? Owner(RigSettings wired, int line)
    {
        if (HardwareLines.All.FirstOrDefault(row => row.Line(wired.Hardware) == line) is { } row)
        {
            return row.Setting;
        }

        for (int i = 0; i < wired.Probes.Count; i++)
        {
            if (wired.Probes[i].Wiring.Line == line)
            {
                return $"rig.probes[{i}].line";
            }
        }

        return null;
    }

    private static string Path(string owner) => owner.StartsWith("rig.", StringComparison.Ordinal) ? owner : $"rig.hardware.{owner}";

    private static string Word(bool value) => value ? "true" : "false";
}
