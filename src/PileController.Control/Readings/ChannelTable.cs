namespace PileController.Control.Readings;

/// <summary>What is fixed about a channel: its name, unit, grain and the range a sound probe can report.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Name">Its name in the record, the settings and on the wire (camelCase).</param>
/// <param name="Unit">SI or everyday metric unit: °C, W/m², L/min, W, V, %, ppm, or empty for a switch.</param>
/// <param name="Quantum">The grain of a stored reading: a value is a whole number of quanta.</param>
/// <param name="Least">Smallest value a sound probe reports.</param>
/// <param name="Most">Largest value a sound probe reports.</param>
/// <param name="FastestPerSecond">Fastest believable change, units per second; a quicker one is marked.</param>
/// <param name="StuckAfterMilliseconds">
/// A live probe's last digit moves at least once in this time, ms; 0 where a constant value is normal.
/// </param>
public sealed record ChannelInfo(
    Channel Channel, string Name, string Unit, double Quantum, double Least, double Most, double FastestPerSecond,
    long StuckAfterMilliseconds);

/// <summary>The table of all channels, in the order of <see cref="Channel"/>.</summary>
public static class ChannelTable
{
    /// <summary>How many channels there are.</summary>
    public const int Count = 24;

    /// <summary>
    /// How many the first records know. Memories, readings and digests tell of a later channel only where there is something
    /// to tell, so that a rig without it makes the same bits as before there was one.
    /// </summary>
    public const int FirstCount = 18;

    private const long Hour = 3_600_000;

    private static readonly ChannelInfo[] Rows =
    [
        // Heap temperatures move by hundredths of a kelvin a minute; a jump is a fault of the probe.
        new(Channel.HeapCore, "heapCore", "°C", 1.0 / 16, -30, 95, 0.05, 3 * Hour),
        new(Channel.HeapMiddle, "heapMiddle", "°C", 1.0 / 16, -30, 95, 0.05, 3 * Hour),
        new(Channel.HeapTurns, "heapTurns", "°C", 1.0 / 16, -30, 95, 0.2, 3 * Hour),
        new(Channel.HeapEdge, "heapEdge", "°C", 1.0 / 16, -40, 95, 0.05, 3 * Hour),
        new(Channel.Supply, "supply", "°C", 1.0 / 16, -30, 95, 3, 2 * Hour),
        new(Channel.Return, "return", "°C", 1.0 / 16, -30, 95, 3, 2 * Hour),
        new(Channel.House, "house", "°C", 1.0 / 16, -40, 70, 0.5, 2 * Hour),
        new(Channel.Floor, "floor", "°C", 1.0 / 16, -30, 60, 0.1, 2 * Hour),
        new(Channel.Tank, "tank", "°C", 1.0 / 16, -10, 95, 0.5, 2 * Hour),
        new(Channel.Outside, "outside", "°C", 1.0 / 16, -50, 55, 0.5, 2 * Hour),
        new(Channel.DuctAir, "ductAir", "°C", 1.0 / 16, -40, 95, 3, 2 * Hour),
        new(Channel.Sun, "sun", "W/m²", 1, 0, 1500, double.PositiveInfinity, 0),
        new(Channel.Flow, "flow", "L/min", 1.0 / 64, 0, 60, double.PositiveInfinity, 0),
        new(Channel.PumpPower, "pumpPower", "W", 1.0 / 8, 0, 500, double.PositiveInfinity, 0),
        new(Channel.BlowerPower, "blowerPower", "W", 1.0 / 8, 0, 500, double.PositiveInfinity, 0),
        new(Channel.Battery, "battery", "V", 1.0 / 128, 0, 60, double.PositiveInfinity, 0),
        new(Channel.Leak, "leak", "", 1, 0, 1, double.PositiveInfinity, 0),
        new(Channel.Level, "level", "", 1, 0, 1, double.PositiveInfinity, 0),

        // The SHT4x cuts what it tells to 0 to 100 %, and follows a step by 63 % within 4 s (data sheet, from memory): whoever
        // opens a door changes it by tens within a tick. Wet air stands at 100 % all night.
        new(Channel.Humidity, "humidity", "%", 1.0 / 8, 0, 100, double.PositiveInfinity, 0),

        // The SCD4x tells 0 to 40,000 ppm and follows a step by 63 % within 60 s (data sheet, from memory), so 40,000 / 60 a
        // second at most; it is no better than 10 ppm from one measurement to the next, so its last digit moves. What says
        // 0 has not measured: leaves take no more up below some 50 ppm (from memory).
        new(Channel.CarbonDioxide, "carbonDioxide", "ppm", 1, 1, 40_000, 667, 2 * Hour),

        // Wherever the grower likes: as quick as in water, as slow as in the heap.
        new(Channel.SpareOne, "spareOne", "°C", 1.0 / 16, -50, 95, 3, 3 * Hour),
        new(Channel.SpareTwo, "spareTwo", "°C", 1.0 / 16, -50, 95, 3, 3 * Hour),
        new(Channel.SpareThree, "spareThree", "°C", 1.0 / 16, -50, 95, 3, 3 * Hour),
        new(Channel.SpareFour, "spareFour", "°C", 1.0 / 16, -50, 95, 3, 3 * Hour),
    ];

    /// <summary>All channels in order.</summary>
    public static IReadOnlyList<ChannelInfo> All => Rows;

    /// <summary>What is fixed about <paramref name="channel"/>.</summary>
    public static ChannelInfo Of(Channel channel) => Rows[(int)channel];

    /// <summary>Finds a channel by its name, ignoring case.</summary>
    /// <returns>False when there is no such channel.</returns>
    public static bool TryFind(string name, out ChannelInfo info)
    {
        foreach (ChannelInfo row in Rows)
        {
            if (string.Equals(row.Name, name, StringComparison.OrdinalIgnoreCase))
            {
                info = row;
                return true;
            }
        }

        info = Rows[0];
        return false;
    }
}
