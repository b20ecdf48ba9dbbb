using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;

namespace PileController.Plans.Sketch;

/// <summary>The pump on its loop at full duty, valve open.</summary>
internal static class LoopSketching
{
    /// <summary>Temperature at which friction is reckoned: about that of water on its way back, °C.</summary>
    public const double WaterC = 15;

    // Below 2 ft/s bubbles stay in a falling pipe (common practice, no source).
    private const double PurgeMPerS = 0.6096;

    public static SketchLoop Of(SketchTrials trials)
    {
        LoopBuild loop = trials.Settings.Loop;
        CoilBuild coil = trials.Settings.Heap.Coil;
        OperatingPoint point = trials.FullFlow;
        double flow = point.FlowLitresPerMinute;
        double widestM = coil.LengthM > 0 ? Math.Max(coil.InnerDiameterM, loop.LineInnerDiameterM) : loop.LineInnerDiameterM;
        double velocity = Flow.VelocityMPerS(flow, widestM);
        double litres = Litres((2 * loop.LineLengthM) + loop.HousePipeM, loop.LineInnerDiameterM)
            + Litres(coil.LengthM, coil.InnerDiameterM);
        return new SketchLoop(
            flow, point.HeadM, point.Watts, flow > 0 ? point.WattsPerLitrePerMinute : null, point.WattHoursPerDay, velocity,
            new PipeRun(1, widestM).Reynolds(flow, WaterC), velocity >= PurgeMPerS,
            flow > 0 ? 60 * litres / flow : null, MinutesToFreezeStill(trials));
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
        double joulesPerMK = Litres(1, loop.LineInnerDiameterM) * Water.DensityKgPerM3(WaterC) / 1000
            * Water.SpecificHeatJPerKgK(WaterC);
        double seconds = new LumpedTank(joulesPerMK, loop.LineLossWPerMK).SecondsToReach(trials.Draw.ReturnC, 0, roundC);
        return double.IsFinite(seconds) ? seconds / 60 : null;
    }

    private static double Litres(double lengthM, double diameterM) => 250 * Math.PI * diameterM * diameterM * lengthM;
}
