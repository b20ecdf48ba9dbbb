namespace PileController.FarSide.Plants;

/// <summary>A three-wire motor valve: runs while one of its lines is on, and stands still where both are.</summary>
/// <param name="travelSeconds">From shut to open, s; 0 when there is no valve, and the pipe is open.</param>
public sealed class ValveBody(double travelSeconds)
{
    /// <summary>Where it stands, 0 shut to 1 open. It is found shut.</summary>
    public double Opening { get; private set; } = travelSeconds > 0 ? 0 : 1;

    /// <summary>Whether the switch at its open end is made.</summary>
    public bool StandsOpen => Opening >= 1;

    /// <summary>Whether the switch at its shut end is made.</summary>
    public bool StandsShut => Opening <= 0;

    /// <summary>Runs as the lines say.</summary>
    /// <returns>The mean opening over that while, which is what the water felt.</returns>
    public double Run(in LinesSeen lines, double seconds)
    {
        if (travelSeconds <= 0 || lines.ValveOpens == lines.ValveShuts)
        {
            return Opening;
        }

        double from = Opening;
        double way = (lines.ValveOpens ? 1 : -1) * seconds / travelSeconds;
        Opening = Math.Clamp(from + way, 0, 1);
        double moving = Math.Abs(Opening - from) / Math.Abs(way);
        return (moving * 0.5 * (from + Opening)) + ((1 - moving) * Opening);
    }
}
