namespace PileController.Settings;

/// <summary>How long the record is kept. Coarser summaries, decisions and commands are kept for ever.</summary>
public sealed record RecordSettings
{
    private const double SecondsADay = 86_400;

    /// <summary>Days for which single ticks are kept (1 to 3660).</summary>
    public double KeepDays { get; init; } = 60;

    /// <summary>Days for which summaries of a minute are kept (1 to 36,600).</summary>
    public double KeepMinutesDays { get; init; } = 365;

    /// <summary>The ticks of so many days of running.</summary>
    /// <param name="days">Days.</param>
    /// <param name="tickSeconds">Length of a tick, s.</param>
    public static long Ticks(double days, double tickSeconds) => (long)Math.Ceiling(days * SecondsADay / tickSeconds);
}
