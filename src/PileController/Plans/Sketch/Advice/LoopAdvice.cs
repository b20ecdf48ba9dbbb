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
            // By the affinity laws head goes with the square of the speed.
            double least = Math.Sqrt(loop.StaticLiftM / loop.PumpShutoffHeadM);
            yield return Told(
                trials, "lift", loop with { StaticLiftM = 0 }, "A closed, full loop without the lift", "",
                least <= loop.PumpStartDuty ? null : u => $" As it is, {Show.Length(loop.StaticLiftM, u)} of lift holds the water still while the pump runs below {100 * least:F0} % of its speed: "
                    + "the controller keeps it above that, which takes more of the battery; by hand below it nothing flows and the draw trips. Close the loop if it can be closed.");
        }
    }

    public static LoopBuild BiggerPump(LoopBuild loop) => loop with
    {
        PumpShutoffHeadM = Bigger * loop.PumpShutoffHeadM,
        PumpFreeFlowLitresPerMinute = Bigger * loop.PumpFreeFlowLitresPerMinute,
        PumpWatts = Bigger * Bigger * loop.PumpWatts,
    };

    private static PlanWords Told(SketchTrials trials, string kind, LoopBuild changed, string name, string whySmall, Func<UnitSystem, string>? risk = null)
    {
        double now = trials.FullFlow.FlowLitresPerMinute;
        OperatingPoint point = SketchTrials.FlowOf(changed, trials.Settings.Heap.Coil);
        double gain = trials.GainWatts(trials.With(changed));
        bool small = !Say.IsWorth(gain, trials.Base.DrawnWatts);
        return Say.Both(
            kind,
            u => $"{name} moves {Show.WaterFlow(point.FlowLitresPerMinute, u)} instead of {Show.WaterFlow(now, u)} and {Say.Gain(gain, u)} of heat"
                + (risk is null ? $"{Say.Worth(gain, trials.Base.DrawnWatts)}{(small ? whySmall : "")}." : $".{risk(u)}"),
            gain, risk is not null || !small);
    }
}
