using PileController.Physics.Hydraulics;

namespace PileController.Parts;

/// <summary>A pump as its file tells it.</summary>
internal sealed record PumpPart
{
    public string Name { get; init; } = "pump";

    public double? RatedVolts { get; init; }

    public double StartDuty { get; init; }

    public IReadOnlyList<PumpPointPart> Points { get; init; } = [];

    /// <summary>The curve through its points; they must have been checked before.</summary>
    public PumpCurve Curve() => PumpFit.Fit([.. Points.Select(p => p.Measured(RatedVolts))], StartDuty);

    /// <summary>How far its curve misses the worst of its points, m of head.</summary>
    public double LargestMissM(PumpCurve curve) => Points
        .Select(p => p.Measured(RatedVolts))
        .Max(p => Math.Abs(p.HeadM - (curve with { StartDuty = 0 }).HeadM(p.FlowLitresPerMinute, p.Duty)));
}
