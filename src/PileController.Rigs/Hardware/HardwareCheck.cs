namespace PileController.Rigs.Hardware;

/// <summary>Refuses lines that cannot be used together.</summary>
internal static class HardwareCheck
{
    /// <summary>Throws when a line is negative or given twice.</summary>
    /// <exception cref="ArgumentException">Names the setting, what was given and what is allowed.</exception>
    public static void Require(HardwareSettings hardware)
    {
        (string Field, int? Line)[] lines = [.. Lines(hardware)];
        for (int i = 0; i < lines.Length; i++)
        {
            Require(lines[i].Line, lines[i].Field);
            int before = Array.FindIndex(lines, 0, i, other => other.Line is not null && other.Line == lines[i].Line);
            if (before >= 0)
            {
                throw new ArgumentException(
                    $"Hardware.{lines[i].Field} is {lines[i].Line}, and so is Hardware.{lines[before].Field}; each needs a line of its own.",
                    nameof(hardware));
            }
        }
    }

    /// <summary>The lines the board drives, each with the property that gives it.</summary>
    public static IReadOnlyList<(string Field, int? Line)> Lines(HardwareSettings hardware) =>
    [
        (nameof(HardwareSettings.PumpPin), hardware.PumpPin), (nameof(HardwareSettings.BlowerPin), hardware.BlowerPin),
        (nameof(HardwareSettings.LampLine), hardware.LampLine), (nameof(HardwareSettings.PulseLine), hardware.PulseLine),
    ];

    private static void Require(int? pin, string field)
    {
        if (pin < 0)
        {
            throw new ArgumentException($"Hardware.{field} is {pin}; allowed is 0 or more, or none.", field);
        }
    }
}
