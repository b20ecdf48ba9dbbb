using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Plants;

/// <summary>What a loop and its coil are to the water: pump, runs of pipe, wall of the pipe. Plant and plan ask here alike.</summary>
public static class LoopCircuit
{
    /// <summary>Loss coefficient of elbows, tees and the tank's inlet together (common practice, no source).</summary>
    public const double FittingsK = 20;

    /// <summary>Conductivity of the pipe's wall, W/(m·K): cross-linked polyethylene (from memory).</summary>
    public const double PipeWallWPerMK = 0.41;

    // The water's film, which hardly matters beside the bed.
    private const double FilmMKPerW = 0.02;

    /// <summary>The pump as the settings tell it.</summary>
    /// <param name="loop">The loop.</param>
    public static PumpCurve Pump(LoopBuild loop) =>
        new(loop.PumpShutoffHeadM, loop.PumpFreeFlowLitresPerMinute, loop.PumpWatts, loop.PumpStartDuty);

    /// <summary>The runs of pipe the water goes through: lines and house pipe, then the coil where there is one.</summary>
    /// <param name="loop">The loop.</param>
    /// <param name="coil">The coil.</param>
    public static IReadOnlyList<PipeRun> Runs(LoopBuild loop, CoilBuild coil)
    {
        PipeRun outside = new(
            (2 * loop.LineLengthM) + loop.HousePipeM, loop.LineInnerDiameterM, FittingsK, loop.StaticLiftM);
        return coil.LengthM > 0 ? [outside, new PipeRun(coil.LengthM, coil.InnerDiameterM)] : [outside];
    }

    /// <summary>Resistance of film and wall of the whole coil, K/W; infinity without a coil.</summary>
    /// <param name="coil">The coil.</param>
    public static double PipeWallKPerW(CoilBuild coil) => coil.LengthM > 0
        ? ((Portable.Log(coil.OuterDiameterM / coil.InnerDiameterM) / (2 * Math.PI * PipeWallWPerMK)) + FilmMKPerW) / coil.LengthM
        : double.PositiveInfinity;
}
