using PileController.Control.Regulation;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;

namespace PileController.Settings;

/// <summary>Tells the controller how flow hangs on duty and valve opening, from pump and loop as built.</summary>
internal static class LoopCurving
{
    // House water in a heated season; between cold and hot the flow of a loop differs by a tenth.
    private const double WaterC = 20;

    // A loss of the size of a loop's own, so that both ends of the curve count.
    private const double TrialK = 1000;

    /// <summary>The curve, its figures rounded to what a loop can be known by.</summary>
    /// <param name="settings">The settings; the controller's own part is not looked at.</param>
    public static LoopCurve Of(PileSettings settings)
    {
        PumpCurve pump = LoopCircuit.Pump(settings.Loop);
        LoopHydraulics loop = new(pump, LoopCircuit.Runs(settings.Loop, settings.Heap.Coil));
        double free = loop.FlowLitresPerMinute(1, WaterC);
        double throttled = loop.FlowLitresPerMinute(1, WaterC, TrialK);
        if (throttled <= 0)
        {
            // A lift beyond the pump: nothing flows, and the interlock will say so.
            return new LoopCurve { StillDuty = 1, ValveTravelSeconds = settings.Loop.ValveTravelSeconds };
        }

        double ratio = throttled * throttled / (free * free);
        return new LoopCurve
        {
            FullFlowLitresPerMinute = Math.Round(free, 2),
            StillDuty = Math.Round(Math.Min(1, Math.Sqrt(settings.Loop.StaticLiftM / settings.Loop.PumpShutoffHeadM)), 3),
            LossK = Math.Round(TrialK * ratio / (1 - ratio)),
            ValveTravelSeconds = settings.Loop.ValveTravelSeconds,
        };
    }
}
