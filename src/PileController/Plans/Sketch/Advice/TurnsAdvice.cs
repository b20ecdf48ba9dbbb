using PileController.Physics.Heaps;
using PileController.Settings.Checks;
using PileController.Units;

namespace PileController.Plans.Sketch.Advice;

/// <summary>More or less pipe, and pipe elsewhere.</summary>
internal static class TurnsAdvice
{
    private const double MoreTurns = 2;
    private const double NearM = 0.02;

    public static IEnumerable<PlanWords> Of(SketchTrials trials, SketchCoil coil)
    {
        HeapBuild build = trials.Settings.Heap;
        double now = trials.Base.DrawnWatts;
        if (build.Coil.LengthM <= 0)
        {
            yield break;
        }

        HeapBuild more = WithMoreTurns(build);
        if (more.Coil.LengthM <= HeapChecks.LongestCoilM(more))
        {
            double gain = trials.GainWatts(trials.With(more));
            yield return Say.Both(
                "turns",
                u => $"Two more turns at {Show.Length(build.Coil.RadiusM, u)} ({Show.Length(more.Coil.LengthM - build.Coil.LengthM, u)} of pipe) "
                    + $"{Say.Gains(gain, u)} on the season's mean{Say.Worth(gain, now)}."
                    + (gain < Say.WorthShare * now ? " Conduction in the bed is the limit, not the length of the pipe." : ""),
                gain, Say.IsWorth(gain, now));
        }

        double less = trials.GainWatts(trials.With(WithHalfThePipe(build)));
        bool spare = -less < Say.WorthShare * now;
        yield return Say.Both(
            "lessPipe",
            u => $"Half the pipe ({Show.Length(build.Coil.LengthM / 2, u)} less) {Say.Gain(less, u)}"
                + (spare ? ": the other half can be left on the shelf." : ": keep all of it."),
            less, spare);

        SketchPlace? best = coil.Places.MaxBy(p => p.MeanDrawnWatts);
        if (best is not null && Math.Abs(best.RadiusM - build.Coil.RadiusM) > NearM)
        {
            double gain = best.MeanDrawnWatts - now;
            yield return Say.Both(
                "radius",
                u => $"The same pipe at {Show.Length(best.RadiusM, u)} instead of {Show.Length(build.Coil.RadiusM, u)} {Say.Gain(gain, u)}"
                    + $"{Say.Worth(gain, now)}. Turns further out lie in more chips and take heat that would leave through the side; "
                    + "keep the probe at the turns wherever they lie.",
                gain, Say.IsWorth(gain, now));
        }
    }

    public static HeapBuild WithMoreTurns(HeapBuild build) =>
        WithPipe(build, build.Coil.LengthM + (MoreTurns * 2 * Math.PI * build.Coil.RadiusM));

    public static HeapBuild WithHalfThePipe(HeapBuild build) => WithPipe(build, build.Coil.LengthM / 2);

    private static HeapBuild WithPipe(HeapBuild build, double metres) => build with { Coil = build.Coil with { LengthM = metres } };
}
