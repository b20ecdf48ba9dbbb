namespace PileController.Control.Estimation;

/// <summary>What the estimator remembers.</summary>
public readonly record struct EstimatorMemory
{
    private static readonly Kept<HeapTold> Nothing = new(default(HeapTold));
    private readonly Kept<HeapTold>? _told;

    /// <summary>Estimate of the inner body's mean, °C.</summary>
    public double BodyC { get => Now.BodyC; init => Told = Told with { BodyC = value }; }

    /// <summary>Estimate of the active zone, °C.</summary>
    public double ActiveZoneC { get => Now.ActiveZoneC; init => Told = Told with { ActiveZoneC = value }; }

    /// <summary>Estimate of the heat made less the heat lost by itself, W.</summary>
    public double NetW { get => Now.NetW; init => Told = Told with { NetW = value }; }

    /// <summary>Variance of the active-zone estimate, K².</summary>
    public double VarianceK2 { get => Now.VarianceK2; init => Told = Told with { VarianceK2 = value }; }

    /// <summary>Air outside, last believed, °C.</summary>
    public double OutsideC { get; init; }

    /// <summary>Since when the active zone has been hot enough to count as lit, monotonic; -1 for not.</summary>
    public long HotSinceMilliseconds { get => Now.HotSinceMilliseconds; init => Told = Told with { HotSinceMilliseconds = value }; }

    /// <summary>Whether the heap has lit.</summary>
    public bool Lit { get => Now.Lit; init => Told = Told with { Lit = value }; }

    /// <summary>Whether a first reading has been taken since the start.</summary>
    public bool Started { get => Now.Started; init => Told = Told with { Started = value }; }

    /// <summary>Estimate of the bed at the core probe, °C.</summary>
    public double CoreC { get => Now.CoreC; init => Told = Told with { CoreC = value }; }

    /// <summary>Estimate of the bed a few centimetres from the turns, °C.</summary>
    public double TurnsC { get => Now.TurnsC; init => Told = Told with { TurnsC = value }; }

    /// <summary>What was metered since the observer last took anything in.</summary>
    public HeapTally Tally { get; init; }

    /// <summary>What the observer believes; null before the first reading.</summary>
    public HeapBelief? Belief { get => Now.Belief; init => Told = Told with { Belief = value }; }

    /// <summary>What the active zone would come to at the least if nothing more were drawn, °C.</summary>
    public double LeastZoneC { get => Now.LeastZoneC; init => Told = Told with { LeastZoneC = value }; }

    /// <summary>What stands between two updates, as one.</summary>
    internal HeapTold Told { get => Now; init => _told = (_told ?? Nothing).As(value); }

    /// <summary>Nothing seen yet.</summary>
    public static EstimatorMemory Fresh => new() { VarianceK2 = 25, OutsideC = 5, HotSinceMilliseconds = -1 };

    private ref readonly HeapTold Now => ref (_told ?? Nothing).Value;
}
