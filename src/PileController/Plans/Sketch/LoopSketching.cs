using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;

namespace PileController.Plans.Sketch;

/// <summary>The pump on its loop at full duty, valve open.</summary>
internal static class LoopSketching
{
    /// <summary>Temperature at which friction is reckoned: about that of water on its way back, °C.</summary>
    public const double WaterC = 15;

    public static SketchLoop Of(SketchTrials trials)
    {
        LoopBuild loop = trials.Settings.Loop;
        CoilBuild coil = trials.Settings.Heap.Coil;
        OperatingPoint point = trials.FullFlow;
        double flow = point.FlowLitresPerMinute;
        double widestM = coil.LengthM > 0 ? Math.Max(coil.InnerDiameterM, loop.LineInnerDiameterM) : loop.LineInnerDiameterM;
        double velocity = Flow.VelocityMPerS(flow, widestM);
        double seconds = LoopCircuit.Runs(loop, coil).Sum(run => run.TransitSeconds(flow));
        return new SketchLoop(
            flow, point.HeadM, point.Watts, flow > 0 ? point.WattsPerLitrePerMinute : null, point.WattHoursPerDay, velocity,
            new PipeRun(1, widestM).Reynolds(flow, WaterC), AirPurge.Purges(velocity),
            flow > 0 ? seconds : null, MinutesToFreezeStill(trials));
    }

    /// <summary>Heat-capacity rate of the water, W/K.</summary>
    public static double CapacityRateWPerK(double flowLitresPerMinute) =>
        Water.MassFlowKgPerS(flowLitresPerMinute, WaterC) * Water.SpecificHeatJPerKgK(WaterC);

    // The pipe's wall is left out, so the time told is a little short of the true one.
    private static double? MinutesToFreezeStill(SketchTrials trials)
    {
        LoopBuild loop = trials.Settings.Loop;
        if (loop.LineLengthM <= 0 || loop.LineLossWPerMK <= 0)
        {
            return null;
        }

        double groundC = trials.Settings.House.GroundC;
        double roundC = groundC + (loop.LineExposure * (HouseLoad.DesignOutsideOf(trials) - groundC));
        double joulesPerMK = new PipeRun(1, loop.LineInnerDiameterM).Litres * Water.DensityKgPerM3(WaterC) / 1000
            * Water.SpecificHeatJPerKgK(WaterC);
        double seconds = new LumpedTank(joulesPerMK, loop.LineLossWPerMK).SecondsToReach(trials.Draw.ReturnC, 0, roundC);
        return double.IsFinite(seconds) ? seconds / 60 : null;
    }
}
