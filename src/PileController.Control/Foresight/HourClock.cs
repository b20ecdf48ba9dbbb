namespace PileController.Control.Foresight;

/// <summary>Which hour a moment lies in.</summary>
internal static class HourClock
{
    public const long Milliseconds = 3_600_000;

    /// <summary>Hours since 1970-01-01T00:00Z, the hour that holds the moment.</summary>
    public static long Of(in Instant at) => (long)Math.Floor(at.UtcMilliseconds / (double)Milliseconds);

    /// <summary>Local hour of the day, 0 to 23, in the middle of an hour.</summary>
    public static int Local(long hour, int offsetMinutes)
    {
        long minutes = (hour * 60) + 30 + offsetMinutes;
        return (int)((((minutes % 1440) + 1440) % 1440) / 60);
    }
}
