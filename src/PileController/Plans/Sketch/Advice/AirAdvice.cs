using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Units;

namespace PileController.Plans.Sketch.Advice;

/// <summary>What the ducts bring beside the water.</summary>
internal static class AirAdvice
{
    public static IEnumerable<PlanWords> Of(SketchTrials trials)
    {
        DuctBuild duct = trials.Settings.Heap.Duct;
        if (trials.Draw.Blows || duct.LengthM <= 0 || duct.ThroughHeap)
        {
            yield break;
        }

        HeapTrialResult both = trials.Run(trials.Settings.Heap, trials.Draw with { Blows = true });
        double gain = trials.GainWatts(both);
        double water = both.WaterWatts - trials.Base.WaterWatts;
        yield return Say.Both(
            "ducts",
            u => $"Running the closed ducts all the while beside the water {Say.Gain(gain, u)} in all (the water itself: {Show.Power(water, u)})"
                + $"{Say.Worth(gain, trials.Base.DrawnWatts)}. They draw on the same heap: keep them for the coldest nights.",
            gain, Say.IsWorth(gain, trials.Base.DrawnWatts));
    }
}
