namespace PileController.Rigs;

/// <summary>One line of the chip that the settings may give to an actuator.</summary>
/// <param name="Setting">The setting, below the section of the hardware: "valve.openLine".</param>
/// <param name="Line">Its line, or null when it is not wired.</param>
public sealed record HardwareLine(string Setting, Func<HardwareSettings, int?> Line);

/// <summary>All lines that belong to actuators, in the order in which they are told of.</summary>
public static class HardwareLines
{
    /// <summary>The rows.</summary>
    public static IReadOnlyList<HardwareLine> All { get; } =
    [
        new("pumpPin", h => h.PumpPin),
        new("blowerPin", h => h.BlowerPin),
        new("backupLine", h => h.BackupLine),
        new("valve.openLine", h => h.Valve.OpenLine),
        new("valve.shutLine", h => h.Valve.ShutLine),
        new("valve.openEndLine", h => h.Valve.OpenEndLine),
        new("valve.shutEndLine", h => h.Valve.ShutEndLine),
        new("lampLine", h => h.LampLine),
        new("pulseLine", h => h.PulseLine),
    ];

    /// <summary>The pairs that share a line: the later row, then the first that has it already.</summary>
    public static IEnumerable<(HardwareLine Line, HardwareLine Before)> Twice(HardwareSettings hardware)
    {
        for (int i = 0; i < All.Count; i++)
        {
            int? line = All[i].Line(hardware);
            if (line is not null && All.Take(i).FirstOrDefault(before => before.Line(hardware) == line) is { } before)
            {
                yield return (All[i], before);
            }
        }
    }
}
