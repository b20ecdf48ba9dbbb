using System.Globalization;
using PileController.FarSide.Plants;

namespace PileController.FarSide;

/// <summary>The four lines of a motor valve.</summary>
/// <param name="OpenLine">Runs it open.</param>
/// <param name="ShutLine">Runs it shut.</param>
/// <param name="OpenEndLine">High where it stands open.</param>
/// <param name="ShutEndLine">High where it stands shut.</param>
public sealed record ValveWires(int OpenLine, int ShutLine, int OpenEndLine, int ShutEndLine);

/// <summary>What the far side is told when it is started: --name value, in any order.</summary>
public sealed record FarOptions
{
    /// <summary>What may be said, a line an option.</summary>
    public const string Help = """
        --holding FILE     a holding as the controller keeps it; its plant goes on from there
        --weather FILE     weather the plant stands in; or --night C and --day C, its coldest and warmest air
        --probes PLACES    where each thermometer hangs, in the order of the addresses: bed:0.45,turns,supply,return,house
        --pump SOURCE      gpio:LINE, pwm:CHANNEL or i2c:ADDRESS:CHANNEL; those in series with + between them
        --blower SOURCE    the same
        --valve LINES      opens,shuts,open end,shut end; left out: no valve
        --travel S         time the valve takes from shut to open, s; 30
        --flow LINE        line of the flow meter
        --pulses N         its pulses a litre; 450
        --look MS          how often the outputs are looked at, 20 to 1000 ms; 50
        --told FILE        a line a minute is written there of what the plant comes to
        """;

    /// <summary>Kept holding.</summary>
    public required string Holding { get; init; }

    /// <summary>Weather file, or null.</summary>
    public string? Weather { get; init; }

    /// <summary>Coldest air where no file is given, °C.</summary>
    public double NightC { get; init; } = -4;

    /// <summary>Warmest air where no file is given, °C.</summary>
    public double DayC { get; init; } = 3;

    /// <summary>Where the thermometers hang.</summary>
    public required IReadOnlyList<ProbeSpot> Probes { get; init; }

    /// <summary>Where the pump's signal is seen.</summary>
    public required string Pump { get; init; }

    /// <summary>Where the blower's signal is seen.</summary>
    public required string Blower { get; init; }

    /// <summary>The valve, or null for none.</summary>
    public ValveWires? Valve { get; init; }

    /// <summary>Time the valve takes from shut to open, s.</summary>
    public double TravelSeconds { get; init; } = 30;

    /// <summary>Line of the flow meter.</summary>
    public required int FlowLine { get; init; }

    /// <summary>Pulses a litre, 1/L.</summary>
    public double PulsesPerLitre { get; init; } = 450;

    /// <summary>Time between two looks, ms.</summary>
    public int LookMilliseconds { get; init; } = 50;

    /// <summary>File that is told what the plant comes to, or null.</summary>
    public string? Told { get; init; }

    /// <summary>Reads them.</summary>
    /// <exception cref="ArgumentException">One is unknown, missing or not allowed; the message names it, what was given and what is allowed.</exception>
    public static FarOptions Parse(IReadOnlyList<string> words)
    {
        Dictionary<string, string> given = [];
        for (int i = 0; i < words.Count; i += 2)
        {
            if (!Help.Contains(words[i] + " ", StringComparison.Ordinal) || !words[i].StartsWith("--", StringComparison.Ordinal))
            {
                throw new ArgumentException($"The option is \"{words[i]}\"; allowed:\n{Help}");
            }

            given[words[i]] = i + 1 < words.Count ? words[i + 1] : throw new ArgumentException($"{words[i]} has no value; allowed:\n{Help}");
        }

        return new FarOptions
        {
            Holding = Need(given, "--holding"),
            Weather = given.GetValueOrDefault("--weather"),
            NightC = Number(given, "--night", -4, -40, 30),
            DayC = Number(given, "--day", 3, -40, 40),
            Probes = [.. Need(given, "--probes").Split(',').Select(ProbeSpot.Parse)],
            Pump = Need(given, "--pump"),
            Blower = Need(given, "--blower"),
            Valve = given.TryGetValue("--valve", out string? valve) ? Wires(valve) : null,
            TravelSeconds = Number(given, "--travel", 30, 1, 600),
            FlowLine = (int)Number(given, "--flow", -1, 0, 511),
            PulsesPerLitre = Number(given, "--pulses", 450, 1, 100_000),
            LookMilliseconds = (int)Number(given, "--look", 50, 20, 1000),
            Told = given.GetValueOrDefault("--told"),
        };
    }

    private static string Need(Dictionary<string, string> given, string name) =>
        given.TryGetValue(name, out string? value) ? value : throw new ArgumentException($"{name} is missing; allowed:\n{Help}");

    private static double Number(Dictionary<string, string> given, string name, double usual, double least, double most)
    {
        string text = given.GetValueOrDefault(name) ?? usual.ToString(CultureInfo.InvariantCulture);
        return double.TryParse(text, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most
            ? value
            : throw new ArgumentException($"{name} is \"{text}\"; allowed: a number from {least} to {most}.");
    }

    private static ValveWires Wires(string text)
    {
        int[] lines = [.. text.Split(',').Select(word => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int line) ? line : -1)];
        return lines is [>= 0, >= 0, >= 0, >= 0]
            ? new ValveWires(lines[0], lines[1], lines[2], lines[3])
            : throw new ArgumentException($"--valve is \"{text}\"; allowed: four lines, such as 5,6,12,13.");
    }
}
