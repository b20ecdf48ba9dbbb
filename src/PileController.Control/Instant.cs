namespace PileController.Control;

/// <summary>
/// The moment a tick belongs to. Durations are taken from <see cref="MonotonicMilliseconds"/>, which a clock
/// change cannot move; the wall time is a label.
/// </summary>
/// <param name="UtcMilliseconds">Milliseconds since 1970-01-01T00:00:00Z.</param>
/// <param name="MonotonicMilliseconds">Milliseconds on a clock that only runs forward.</param>
/// <param name="OffsetMinutes">Local standard or summer time minus UTC, minutes (-840 to 840).</param>
public readonly record struct Instant(long UtcMilliseconds, long MonotonicMilliseconds, int OffsetMinutes)
{
    /// <summary>Local time of day in hours, 0 (inclusive) to 24 (exclusive).</summary>
    public double LocalHour
    {
        get
        {
            const long day = 86_400_000;
            long local = UtcMilliseconds + (OffsetMinutes * 60_000L);
            return ((local % day) + day) % day / 3_600_000.0;
        }
    }

    /// <summary>The wall time as a UTC date and time.</summary>
    public DateTimeOffset Utc => DateTimeOffset.FromUnixTimeMilliseconds(UtcMilliseconds);
}
