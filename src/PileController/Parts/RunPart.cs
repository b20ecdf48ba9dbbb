using PileController.Physics.Hydraulics;

namespace PileController.Parts;

/// <summary>A run of one tube as a loop's file tells it.</summary>
internal sealed record RunPart
{
    public PipeSize? Tube { get; init; }

    public double LengthM { get; init; }

    public IReadOnlyList<FittingCount> Fittings { get; init; } = [];

    public double ExtraK { get; init; }

    public double TurnDiameterM { get; init; }

    /// <summary>The run for the sum, once checked; a lift is the whole loop's, not the run's.</summary>
    public PipeRun Run(double staticLiftM = 0)
    {
        double bore = Tube!.InnerDiameterM;
        return new PipeRun(LengthM, bore, ExtraK + Fittings.Sum(f => f.LossK(bore)), staticLiftM) { TurnDiameterM = TurnDiameterM };
    }
}
