namespace PileController.Control.Estimation;

/// <summary>What of an <see cref="EstimatorMemory"/> stands between two updates of the observer; told there.</summary>
internal readonly record struct HeapTold
{
    public double BodyC { get; init; }

    public double ActiveZoneC { get; init; }

    public double NetW { get; init; }

    public double VarianceK2 { get; init; }

    public long HotSinceMilliseconds { get; init; }

    public bool Lit { get; init; }

    public bool Started { get; init; }

    public double CoreC { get; init; }

    public double TurnsC { get; init; }

    public HeapBelief? Belief { get; init; }

    public double LeastZoneC { get; init; }
}
