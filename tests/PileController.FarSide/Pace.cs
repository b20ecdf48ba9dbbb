namespace PileController.FarSide;

/// <summary>
/// A schedule of its own: looks stand at whole multiples of their time from the start, however late one was, so nothing adds up.
/// </summary>
/// <param name="lookMilliseconds">Time between two looks, ms.</param>
public sealed class Pace(int lookMilliseconds)
{
    /// <summary>When the next look is due, ms since the start.</summary>
    public long NextLook { get; private set; } = lookMilliseconds;

    /// <summary>How long to wait for the next look or edge, ms; 0 when something is due.</summary>
    /// <param name="nowMilliseconds">Time since the start, ms.</param>
    /// <param name="secondsToEdge">Time until the wheel's next edge, s; may be infinite.</param>
    /// <param name="leastToEdgeMilliseconds">Least time until an edge may be given, ms.</param>
    public int Wait(long nowMilliseconds, double secondsToEdge, int leastToEdgeMilliseconds)
    {
        double toEdge = Math.Max(1000 * secondsToEdge, leastToEdgeMilliseconds);
        return (int)Math.Clamp(Math.Min(NextLook - nowMilliseconds, Math.Ceiling(toEdge)), 0, lookMilliseconds);
    }

    /// <summary>Whether a look is due; the next one is then the first multiple after now.</summary>
    /// <param name="nowMilliseconds">Time since the start, ms.</param>
    public bool TakeLook(long nowMilliseconds)
    {
        if (nowMilliseconds < NextLook)
        {
            return false;
        }

        NextLook = ((nowMilliseconds / lookMilliseconds) + 1) * lookMilliseconds;
        return true;
    }
}
