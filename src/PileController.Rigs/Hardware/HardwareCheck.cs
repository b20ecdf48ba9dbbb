namespace PileController.Rigs.Hardware;

/// <summary>Refuses wiring that cannot be used together, before any output moves.</summary>
internal static class HardwareCheck
{
    /// <summary>Throws when a line is negative or given twice, a channel is given twice or missing, or a valve is half wired.</summary>
    /// <exception cref="ArgumentException">Names the setting, what was given and what is allowed.</exception>
    public static void Require(HardwareSettings hardware)
    {
        foreach ((string field, int? line) in Lines(hardware).Where(line => line.Line < 0))
        {
            throw new ArgumentException($"Hardware.{field} is {line}; allowed is 0 or more, or none.", nameof(hardware));
        }

        foreach ((HardwareLine row, HardwareLine before) in HardwareLines.Twice(hardware))
        {
            throw new ArgumentException(
                $"Hardware.{Name(row)} is {row.Line(hardware)}, and so is Hardware.{Name(before)}; each needs a line of its own.",
                nameof(hardware));
        }

        RequireSignals(hardware);
        RequireValve(hardware.Valve);
    }

    /// <summary>The lines that belong to actuators, each with the property that gives it.</summary>
    public static IReadOnlyList<(string Field, int? Line)> Lines(HardwareSettings hardware) =>
        [.. HardwareLines.All.Select(row => (Name(row), row.Line(hardware)))];

    private static void RequireSignals(HardwareSettings hardware)
    {
        (string Field, LoadSettings Load, int? Line)[] loads =
            [(nameof(hardware.Pump), hardware.Pump, hardware.PumpPin), (nameof(hardware.Blower), hardware.Blower, hardware.BlowerPin)];
        foreach ((string field, LoadSettings load, int? line) in loads.Where(load => load.Load.Drive != LoadDrive.Line))
        {
            if (load.Channel is null)
            {
                throw new ArgumentException($"Hardware.{field}.Channel is none; a load driven by PWM needs a channel.", nameof(hardware));
            }

            if (load.Inverted && line is null)
            {
                throw new ArgumentException(
                    $"Hardware.{field}.Inverted is true without a line; a load that runs when its signal fails needs a relay in series.", nameof(hardware));
            }

            if (load.Drive == LoadDrive.Pwm && hardware.PwmChip is null)
            {
                throw new ArgumentException($"Hardware.PwmChip is none; Hardware.{field} is driven by it.", nameof(hardware));
            }
        }

        if (hardware.Pump.Drive != LoadDrive.Line && hardware.Pump.Drive == hardware.Blower.Drive && hardware.Pump.Channel == hardware.Blower.Channel)
        {
            throw new ArgumentException(
                $"Hardware.Blower.Channel is {hardware.Blower.Channel}, and so is Hardware.Pump.Channel; each needs a channel of its own.", nameof(hardware));
        }
    }

    private static void RequireValve(ValveSettings valve)
    {
        if ((valve.OpenLine is null) != (valve.ShutLine is null))
        {
            throw new ArgumentException(
                $"Hardware.Valve.OpenLine is {valve.OpenLine?.ToString() ?? "none"} and Hardware.Valve.ShutLine is {valve.ShutLine?.ToString() ?? "none"}; a motor valve needs both, or none.",
                nameof(valve));
        }
    }

    // The settings' names as properties: "valve.openLine" is Valve.OpenLine.
    private static string Name(HardwareLine row) =>
        string.Join('.', row.Setting.Split('.').Select(part => char.ToUpperInvariant(part[0]) + part[1..]));
}
