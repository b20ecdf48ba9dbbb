namespace PileController.Service;

/// <summary>How a tick began against its due time.</summary>
/// <param name="LateMilliseconds">How late, ms.</param>
/// <param name="Missed">Whole ticks that fell out before it.</param>
internal readonly record struct Pace(long LateMilliseconds, long Missed);

/// <summary>
/// Keeps the due times of ticks on a fixed grid. A tick that comes more than a tick late counts those that fell
/// out and goes on with the grid: it neither drifts nor runs the lost ones in a burst.
/// </summary>
internal sealed class TickPacer(long firstDueMilliseconds, long tickMilliseconds)
{
    /// <summary>When the next tick is due, ms on the monotonic clock.</summary>
    public long DueMilliseconds { get; private set; } = firstDueMilliseconds;

    /// <summary>Begins the tick that is due, at <paramref name="nowMilliseconds"/>.</summary>
    public Pace Begin(long nowMilliseconds)
    {
        long late = Math.Max(0, nowMilliseconds - DueMilliseconds);
        long missed = late / tickMilliseconds;
        DueMilliseconds += (missed + 1) * tickMilliseconds;
        return new Pace(late, missed);
    }
}
