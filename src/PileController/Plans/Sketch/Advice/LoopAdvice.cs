using PileController.Physics.Hydraulics;
using PileController.Units;

namespace PileController.Plans.Sketch.Advice;

/// <summary>A bigger pump and less lift.</summary>
internal static class LoopAdvice
{
    private const double Bigger = 1.5;

    public static IEnumerable<PlanWords> Of(SketchTrials trials)
    {
        LoopBuild loop = trials.Settings.Loop;
        if (!trials.HasWater)
        {
            yield break;
        }

        yield return Told(
            trials, "pump", BiggerPump(loop), "A pump half as strong again, in head and in flow,",
            ". The heap, not the pump, sets the heat");
        if (loop.StaticLiftM > 0)
        {
            yield return Told(
                trials, "lift", loop with { StaticLiftM = 0 }, "A closed, full loop without the lift", "");
        }
    }

    public static LoopBuild BiggerPump(LoopBuild loop) => loop with
    {
        PumpShutoffHeadM = Bigger * loop.PumpShutoffHeadM,
        PumpFreeFlowLitresPerMinute = Bigger * loop.PumpFreeFlowLitresPerMinute,
        PumpWatts = Bigger * Bigger * loop.PumpWatts,
    };

    private static PlanWords Told(SketchTrials trials, string kind, LoopBuild changed, string name, string whySmall)
    {
        double now = trials.FullFlow.FlowLitresPerMinute;
        OperatingPoint point = SketchTrials.FlowOf(changed, trials.Settings.Heap.Coil);
        double gain = trials.GainWatts(trials.With(changed));
        bool small = gain < Say.WorthShare * trials.Base.DrawnWatts;
        return Say.Both(
            kind,
            u => $"{name} moves {Show.WaterFlow(point.FlowLitresPerMinute, u)} instead of {Show.WaterFlow(now, u)} and {Say.Gain(gain, u)} of heat"
                + $"{Say.Worth(gain, trials.Base.DrawnWatts)}{(small ? whySmall : "")}.",
            gain);
    }
}
