namespace PileController.FarSide.Plants;

/// <summary>
/// The wheel of a flow meter: how many edges its line owes. Water counts, not calls: what came late is still given, one edge
/// at a time.
/// </summary>
/// <param name="pulsesPerLitre">Pulses a litre, 1/L (above 0); each has two edges.</param>
public sealed class PulseWheel(double pulsesPerLitre)
{
    private double _turned;
    private double _edgesPerSecond;

    /// <summary>Whether the line is high.</summary>
    public bool IsHigh { get; private set; }

    /// <summary>Whether an edge is due.</summary>
    public bool IsDue => _turned >= 1;

    /// <summary>Time until the next edge at the flow of now, s; infinite while nothing flows.</summary>
    public double SecondsToEdge => IsDue ? 0 : _edgesPerSecond > 0 ? (1 - _turned) / _edgesPerSecond : double.PositiveInfinity;

    /// <summary>Turns for a while.</summary>
    /// <param name="litresPerMinute">Flow, L/min.</param>
    /// <param name="seconds">How long, s.</param>
    public void Turn(double litresPerMinute, double seconds)
    {
        _edgesPerSecond = 2 * pulsesPerLitre * litresPerMinute / 60;
        _turned += _edgesPerSecond * seconds;
    }

    /// <summary>Gives one edge that is due.</summary>
    /// <returns>Whether the line is high now.</returns>
    public bool Give()
    {
        _turned -= 1;
        IsHigh = !IsHigh;
        return IsHigh;
    }
}
