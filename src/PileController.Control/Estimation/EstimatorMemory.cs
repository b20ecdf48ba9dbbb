namespace PileController.Control.Estimation;

/// <summary>What the estimator remembers.</summary>
/// <param name="BodyC">Estimate of the inner body's mean, °C.</param>
/// <param name="ActiveZoneC">Estimate of the active zone, °C.</param>
/// <param name="NetW">Estimate of the heat made less the heat lost by itself, W.</param>
/// <param name="VarianceK2">Variance of the active-zone estimate, K².</param>
/// <param name="OutsideC">Air outside, last believed, °C.</param>
/// <param name="HotSinceMilliseconds">Since when the active zone has been hot enough to count as lit, monotonic; -1 for not.</param>
/// <param name="Lit">Whether the heap has lit.</param>
/// <param name="Started">Whether a first reading has been taken since the start.</param>
/// <param name="CoreC">Estimate of the bed at the core probe, °C.</param>
/// <param name="TurnsC">Estimate of the bed a few centimetres from the turns, °C.</param>
/// <param name="Tally">What was metered since the observer last took anything in.</param>
/// <param name="Belief">What the observer believes; null before the first reading.</param>
/// <param name="LeastZoneC">What the active zone would come to at the least if nothing more were drawn, °C.</param>
public readonly record struct EstimatorMemory(
    double BodyC, double ActiveZoneC, double NetW, double VarianceK2, double OutsideC,
    long HotSinceMilliseconds, bool Lit, bool Started, double CoreC = 0, double TurnsC = 0, HeapTally Tally = default, HeapBelief? Belief = null,
    double LeastZoneC = 0)
{
    /// <summary>Nothing seen yet.</summary>
    public static EstimatorMemory Fresh => new(0, 0, 0, 25, 5, -1, false, false);
}
