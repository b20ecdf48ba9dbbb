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

    // A debt of one long run at most; a credit that one span of a strong draw makes up for.
    private const double MostDebtJ = 9e6;
    private const double MostCreditJ = 3e6;
    private const double MostKeptJ = 1.5e6;

    // With the house at its minimum runs are shorter and come sooner; the more starts have not worn off, the longer they
    // are. No start is refused then: plants come before the pump.
    private const double UrgentSeconds = 2700;
    private const double UrgentStarts = 8;

    private const double SlackShare = 0.03;

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

    /// <summary>The memory with what has worn off of all starts in a tick.</summary>
    public static RegulatorMemory Worn(in RegulatorMemory memory, double seconds)
    {
        double worn = seconds / SpanSeconds;
        return memory with
        {
            PumpStarts = Math.Max(0, memory.PumpStarts - worn),
            BlowerStarts = Math.Max(0, memory.BlowerStarts - worn),
        };
    }

    /// <summary>Whether one more start may be made now.</summary>
    /// <param name="starts">Starts not yet worn off.</param>
    /// <param name="urgent">Whether the house stands at its minimum.</param>
    public static bool MayStart(double starts, bool urgent) => urgent || starts <= 0;

    /// <summary>What may be short of a start's credit, J: a tick more or less of the run before is not to put the next one off.</summary>
    public static double SlackJ(double grantWatts) => SlackShare * grantWatts * SpanSeconds;

    /// <summary>
    /// What a run may give from now on until the next start is due, J. With no urgency some credit is kept in hand, so that
    /// nothing has to be waited for when the house comes to stand at its minimum.
    /// </summary>
    /// <param name="creditJ">The credit.</param>
    /// <param name="grantWatts">Granted, W.</param>
    /// <param name="urgent">Whether the house stands at its minimum.</param>
    /// <param name="starts">Starts not yet worn off, this run's among them; 0 asks what is in hand now.</param>
    public static double LeftJ(double creditJ, double grantWatts, bool urgent, double starts)
    {
        double span = grantWatts * SpanSeconds;
        return urgent
            ? creditJ + (grantWatts * UrgentSeconds * Math.Min(1, starts) * (1 + (starts / UrgentStarts)))
            : creditJ - Math.Min(MostKeptJ, 0.5 * span) + (span * Math.Min(1, starts));
    }
}
