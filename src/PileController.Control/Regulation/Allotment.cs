namespace PileController.Control.Regulation;

/// <summary>
/// Deals a grant out in runs where the device cannot go as low as is granted. A run gives ahead what is granted until the
/// next start is due, so the mean over whole spans meets the grant; starts wear off at one a span, which bounds them.
/// What is granted and not drawn is kept as a bounded credit.
/// </summary>
internal static class Allotment
{
    /// <summary>Time in which one start wears off, s: twelve starts a day in the long run.</summary>
    public const double SpanSeconds = 7200;

    // The same of a pump that knows full and off only: all it is granted comes in runs, and the shorter they are, the more
    // evenly. A shorter span than an hour a strong slug of warm water from the turns would overrun. A whole number of spans
    // fills four hours, so that four hours hold the same share of runs wherever they begin.
    private const double RelaySpanSeconds = 3600;

    // A debt of one long run at most; a credit that one span of a strong draw makes up for.
    private const double MostDebtJ = 9e6;
    private const double MostCreditJ = 3e6;
    private const double MostKeptJ = 1.5e6;

    // With the house at its minimum runs are shorter and come sooner; the more starts have not worn off, the longer they
    // are. No start is refused then: plants come before the pump.
    private const double UrgentSeconds = 2700;
    private const double UrgentStarts = 8;

    // Starts that have piled up in a cold spell make the next runs longer, by so much of the least run each.
    private const double LongerShare = 0.12;

    /// <summary>Most starts that are remembered: after a cold spell the next run for comfort is a day away, and not weeks.</summary>
    internal const double MostStarts = 12;

    // A tick more or less of the run before is not to put the next one off; in an hour a tick of warm water counts for more.
    private const double SlackShare = 0.03;
    private const double RelaySlackShare = 0.1;

    // The wear of all ticks of a span does not sum to 1 in the last bit; a tick late each time, runs would wander through the day.
    private const double WornOff = 1e-6;

    /// <summary>The credit after a tick, J.</summary>
    /// <param name="creditJ">Before it.</param>
    /// <param name="grantWatts">Granted, W.</param>
    /// <param name="drawWatts">Drawn, W.</param>
    /// <param name="atMost">Whether the device gives all it can: what it cannot give is not owed later.</param>
    /// <param name="seconds">Length of the tick, s.</param>
    public static double Credit(double creditJ, double grantWatts, double drawWatts, bool atMost, double seconds)
    {
        // Nothing is owed once nothing is granted; what was given ahead stays given.
        double gain = (grantWatts - Math.Max(0, drawWatts)) * seconds;
        double next = grantWatts <= 0 ? Math.Min(0, creditJ) : atMost && gain > 0 ? Math.Max(creditJ, Math.Min(0, creditJ + gain)) : creditJ + gain;
        return Math.Clamp(next, -MostDebtJ, MostCreditJ);
    }

    /// <summary>Time in which one start of the pump wears off, s.</summary>
    public static double PumpSpanSeconds(PumpDrive drive) => drive == PumpDrive.OnOff ? RelaySpanSeconds : SpanSeconds;

    /// <summary>How long a run goes on at least, s: a pump that knows full and off only swings the house enough as it is.</summary>
    /// <param name="settings">The drive and its least run.</param>
    /// <param name="starts">Starts not yet worn off, this run's among them.</param>
    public static double LeastRunSeconds(ControlSettings settings, double starts) =>
        settings.PumpLeastRunSeconds * (settings.Drive == PumpDrive.OnOff ? 1 : 1 + (LongerShare * Math.Max(0, starts - 1)));

    /// <summary>The memory with what has worn off of all starts in a tick.</summary>
    /// <param name="memory">The memory.</param>
    /// <param name="drive">What the pump knows.</param>
    /// <param name="seconds">Length of the tick, s.</param>
    public static RegulatorMemory Worn(in RegulatorMemory memory, PumpDrive drive, double seconds) => memory with
    {
        PumpStarts = Left(memory.PumpStarts - (seconds / PumpSpanSeconds(drive)), drive == PumpDrive.OnOff ? WornOff : 0),
        BlowerStarts = Math.Max(0, memory.BlowerStarts - (seconds / SpanSeconds)),
    };

    private static double Left(double starts, double nothing) => starts > nothing ? starts : 0;

    /// <summary>Whether one more start may be made now.</summary>
    /// <param name="starts">Starts not yet worn off.</param>
    /// <param name="urgent">Whether the house stands at its minimum.</param>
    public static bool MayStart(double starts, bool urgent) => urgent || starts <= 0;

    /// <summary>Whether enough is in hand for a run.</summary>
    /// <param name="creditJ">The credit.</param>
    /// <param name="grantWatts">Granted, W.</param>
    /// <param name="urgent">Whether the house stands at its minimum.</param>
    /// <param name="leastRunJ">What the least run is thought to carry, J.</param>
    /// <param name="spanSeconds">Time in which a start wears off, s.</param>
    public static bool Worth(double creditJ, double grantWatts, bool urgent, double leastRunJ, double spanSeconds) =>
        LeftJ(creditJ, grantWatts, urgent, 0, spanSeconds) >= -(spanSeconds < SpanSeconds ? RelaySlackShare : SlackShare) * grantWatts * spanSeconds
        && (creditJ >= MostCreditJ || LeftJ(creditJ, grantWatts, urgent, 1, spanSeconds) >= leastRunJ);

    /// <summary>
    /// What a run may give from now on until the next start is due, J. With no urgency some credit is kept in hand, so that
    /// nothing has to be waited for when the house comes to stand at its minimum.
    /// </summary>
    /// <param name="creditJ">The credit.</param>
    /// <param name="grantWatts">Granted, W.</param>
    /// <param name="urgent">Whether the house stands at its minimum.</param>
    /// <param name="starts">Starts not yet worn off, this run's among them; 0 asks what is in hand now.</param>
    /// <param name="spanSeconds">Time in which a start wears off, s.</param>
    public static double LeftJ(double creditJ, double grantWatts, bool urgent, double starts, double spanSeconds)
    {
        double span = grantWatts * spanSeconds;
        return urgent
            ? creditJ + (grantWatts * Math.Min(UrgentSeconds, spanSeconds) * Math.Min(1, starts) * (1 + (starts / UrgentStarts)))
            : creditJ - Math.Min(MostKeptJ, 0.5 * span) + (span * Math.Min(1, starts));
    }
}
