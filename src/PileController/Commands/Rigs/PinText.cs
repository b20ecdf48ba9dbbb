using System.Globalization;
using PileController.Rigs;

namespace PileController.Commands.Rigs;

/// <summary>The pin map in words.</summary>
internal static class PinText
{
    private static readonly string[] Heads = ["line", "function", "direction", "on", "safe", "switches", "setting"];

    /// <summary>A Markdown table; the chip and what is not wired in a line each.</summary>
    public static void WriteMarkdown(TextWriter output, RigSettings rig)
    {
        HardwareSettings hardware = rig.Hardware;
        output.WriteLine($"Chip: `{hardware.GpioChipLabel}`.");
        output.WriteLine();
        output.WriteLine($"| {string.Join(" | ", Heads)} |");
        output.WriteLine($"| {string.Join(" | ", Heads.Select(_ => "---"))} |");
        foreach (Pin pin in InputPins.AndOutputs(rig))
        {
            string[] cells = Cells(pin);
            output.WriteLine($"| {string.Join(" | ", cells[..^1])} | `{cells[^1]}` |");
        }

        foreach (Signal signal in SignalList.Of(hardware))
        {
            output.WriteLine();
            output.WriteLine($"{signal.Sentence} (`{signal.Setting}`)");
        }

        if (PinMap.Unwired(hardware) is { Count: > 0 } unwired)
        {
            output.WriteLine();
            output.WriteLine($"Not wired: {string.Join(", ", unwired.Select(setting => $"`{setting}`"))}.");
        }
    }

    /// <summary>The same in columns.</summary>
    public static void WriteColumns(TextWriter output, RigSettings rig)
    {
        HardwareSettings hardware = rig.Hardware;
        output.WriteLine($"chip \"{hardware.GpioChipLabel}\"");
        string[][] rows = [Heads, .. InputPins.AndOutputs(rig).Select(Cells)];
        int[] widths = [.. Heads.Select((_, column) => rows.Max(row => row[column].Length))];
        foreach (string[] row in rows)
        {
            output.WriteLine(string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd());
        }

        foreach (Signal signal in SignalList.Of(hardware))
        {
            output.WriteLine($"{signal.Sentence} ({signal.Setting})");
        }

        if (PinMap.Unwired(hardware) is { Count: > 0 } unwired)
        {
            output.WriteLine($"not wired: {string.Join(", ", unwired)}");
        }
    }

    private static string[] Cells(Pin pin) =>
        [pin.Line.ToString(CultureInfo.InvariantCulture), pin.Function, pin.Direction, pin.ActiveLevel, pin.SafeLevel, pin.Switches, pin.Setting];
}
