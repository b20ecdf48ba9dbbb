namespace PileController.Control.Interlocks;

/// <summary>
/// How long a running pump may go without proof that it works: that water moves, that it takes power. Counted from the last
/// reading that proved it, since the one after it tells of all the time between; but never on a single reading, which a
/// bubble in the meter may empty.
/// </summary>
internal static class PumpProof
{
    // As for flow by default: amid two ticks of 10 s. Just after the start the row's own time holds.
    private const long PowerMilliseconds = 15_000;

    /// <summary>Whether a row watches for such proof.</summary>
    public static bool Concerns(Interlock row) => row.Source is Signal.NoFlow or Signal.PumpSilent;

    /// <summary>Whether the want of proof has lasted long enough.</summary>
    /// <param name="limits">The times for flow.</param>
    /// <param name="row">The row.</param>
    /// <param name="blind">Whether nothing can be read now that would prove it.</param>
    /// <param name="since">When it was proven last, or the pump started, monotonic ms.</param>
    /// <param name="at">The moments.</param>
    public static bool HasLasted(InterlockLimits limits, Interlock row, bool blind, long since, in Moments at)
    {
        bool flow = row.Source == Signal.NoFlow;
        long least = flow ? (long)(limits.NoFlowSeconds * 1000) : PowerMilliseconds;
        long grace = flow ? (long)(limits.NoFlowGraceSeconds * 1000) : row.PersistenceMilliseconds;
        long unproven = at.NowMilliseconds - since;
        // Against a shut valve no water moves while nothing is broken: whoever told it so has as long as a start.
        bool explained = blind || (flow && at.ValveIsShut);
        return unproven >= (explained ? Math.Max(least, grace) : least) && at.NowMilliseconds - at.PumpSinceMilliseconds >= grace;
    }
}
