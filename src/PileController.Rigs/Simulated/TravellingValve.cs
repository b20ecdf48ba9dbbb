namespace PileController.Rigs.Simulated;

/// <summary>A motor valve: it travels at one speed towards what it is told and stops there.</summary>
internal sealed class TravellingValve
{
    private readonly double _travelSeconds;

    /// <summary>Makes a shut valve.</summary>
    /// <param name="travelSeconds">From shut to open, s; 0 when there is no valve, and the pipe is always open.</param>
    /// <exception cref="ArgumentException">A negative time, or none.</exception>
    public TravellingValve(double travelSeconds)
    {
        if (!(travelSeconds >= 0) || double.IsInfinity(travelSeconds))
        {
            throw new ArgumentException(
                $"ValveTravelSeconds is {travelSeconds}; allowed is 0 (no valve) or more.", nameof(travelSeconds));
        }

        _travelSeconds = travelSeconds;
        Position = travelSeconds == 0 ? 1 : 0;
    }

    /// <summary>Where it stands, 0 (shut) to 1 (open).</summary>
    public double Position { get; set; }

    /// <summary>Travels for a while.</summary>
    /// <returns>The mean opening over that while, which is what the water felt.</returns>
    public double Travel(double target, double seconds)
    {
        double way = target - Position;
        if (_travelSeconds == 0 || way == 0)
        {
            return Position;
        }

        double reach = seconds / _travelSeconds;
        if (Math.Abs(way) > reach)
        {
            double moved = Math.CopySign(reach, way);
            double mean = Position + (moved / 2);
            Position += moved;
            return mean;
        }

        // It arrives on the way and stands there for the rest.
        double share = Math.Abs(way) / reach;
        Position = target;
        return target - (way / 2 * share);
    }
}
