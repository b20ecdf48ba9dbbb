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
}
