namespace PileController.Records.Accounts;

/// <summary>What ticks are held against when they are counted.</summary>
/// <param name="TickSeconds">Length of a tick, s.</param>
/// <param name="FloorCelsius">The heap's floor, °C.</param>
/// <param name="HouseMinimumCelsius">What the house may not fall below, °C.</param>
/// <param name="OffsetMinutesAt">Local time minus UTC at a moment in UTC milliseconds, minutes.</param>
public sealed record AccountRules(
    double TickSeconds, double FloorCelsius, double HouseMinimumCelsius, Func<long, int> OffsetMinutesAt)
{
    private const long DayMilliseconds = 86_400_000;

    /// <summary>The local date of a moment.</summary>
    /// <param name="utcMilliseconds">Milliseconds since 1970-01-01T00:00:00Z.</param>
    public DateOnly DateOf(long utcMilliseconds) =>
        DateOnly.FromDateTime(DateTime.UnixEpoch).AddDays((int)Math.Floor((double)LocalOf(utcMilliseconds) / DayMilliseconds));

    /// <summary>The local time of day of a moment, hours, 0 (inclusive) to 24 (exclusive).</summary>
    /// <param name="utcMilliseconds">Milliseconds since 1970-01-01T00:00:00Z.</param>
    public double HourOf(long utcMilliseconds)
    {
        long local = LocalOf(utcMilliseconds);
        return (((local % DayMilliseconds) + DayMilliseconds) % DayMilliseconds) / 3_600_000.0;
    }

    private long LocalOf(long utcMilliseconds) => utcMilliseconds + (OffsetMinutesAt(utcMilliseconds) * 60_000L);
}
