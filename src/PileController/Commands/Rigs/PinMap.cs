using PileController.Rigs;

namespace PileController.Commands.Rigs;

/// <summary>The lines of the GPIO chip, one row each, told from the settings. A new line is a new row here.</summary>
internal static class PinMap
{
    private static readonly PinRow[] Rows =
    [
        new("rig.hardware.pumpPin", "loop pump", h => h.PumpPin, "the relay or solid-state gate of the loop pump"),
        new("rig.hardware.blowerPin", "duct blower", h => h.BlowerPin, "the relay or solid-state gate of the duct blower"),
        new("rig.hardware.backupLine", "backup heat", h => h.BackupLine, "the relay of the backup heat's contactor"),
        new("rig.hardware.valve.openLine", "valve, open", h => h.Valve.OpenLine, "the relay that runs the motor valve open"),
        new("rig.hardware.valve.shutLine", "valve, shut", h => h.Valve.ShutLine, "the relay that runs the motor valve shut"),
        new("rig.hardware.valve.openEndLine", "valve stands open", h => h.Valve.OpenEndLine, "told by the end switch of the open end", IsInput: true),
        new("rig.hardware.valve.shutEndLine", "valve stands shut", h => h.Valve.ShutEndLine, "told by the end switch of the shut end", IsInput: true),
        new("rig.hardware.lampLine", "lamp", h => h.LampLine, "the relay that keeps lamp or buzzer off while all is well"),
        new("rig.hardware.pulseLine", "watchdog pulse", h => h.PulseLine, "the timer in series with the loads, which wants a change every second"),
    ];

    /// <summary>The settings that give a line, fitted or not.</summary>
    public static IReadOnlyList<string> Settings { get; } = [.. Rows.Select(row => row.Setting)];

    /// <summary>The lines that are wired, by number.</summary>
    public static IReadOnlyList<Pin> Of(HardwareSettings hardware) =>
    [
        .. Rows.Where(row => row.Line(hardware) is not null)
            .Select(row => row.On(row.Line(hardware)!.Value, row.IsInput ? hardware.Valve.EndsActiveLow : hardware.ActiveLow))
            .OrderBy(pin => pin.Line),
    ];

    /// <summary>The settings that could give a line and do not.</summary>
    public static IReadOnlyList<string> Unwired(HardwareSettings hardware) =>
        [.. Rows.Where(row => row.Line(hardware) is null).Select(row => row.Setting)];

    private sealed record PinRow(
        string Setting, string Function, Func<HardwareSettings, int?> Line, string Switches, bool IsInput = false)
    {
        public Pin On(int line, bool activeLow) => new(
            line, Function, IsInput ? "input" : "output", activeLow ? "low" : "high",
            IsInput ? "–" : activeLow ? "high" : "low", Switches, Setting);
    }
}

/// <summary>One line that is wired.</summary>
/// <param name="Line">Its number on the chip, not the number of a header's pin.</param>
/// <param name="Function">What it is for.</param>
/// <param name="Direction">"output": the board drives it; "input": it reads it.</param>
/// <param name="ActiveLevel">The level that switches what hangs on it on, or tells that it is so; of a switch, tells of harm; "high" or "low".</param>
/// <param name="SafeLevel">The level it has when nothing may run, or while all is well; "–" where it has none. It lets the lamp's relay fall, which lights the lamp.</param>
/// <param name="Switches">What hangs on it.</param>
/// <param name="Setting">The setting that gives it.</param>
internal sealed record Pin(
    int Line, string Function, string Direction, string ActiveLevel, string SafeLevel, string Switches, string Setting);
