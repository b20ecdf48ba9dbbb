namespace PileController.Plans.Sketch.Advice;

/// <summary>What to change and what it brings: every figure is the difference of two reckonings, the best first.</summary>
internal static class Advising
{
    public static IReadOnlyList<PlanWords> Of(SketchTrials trials, SketchCoil coil, HouseLoad load)
    {
        List<PlanWords> counted =
        [
            .. TurnsAdvice.Of(trials, coil), .. HeapAdvice.Of(trials), .. LoopAdvice.Of(trials), .. AirAdvice.Of(trials),
            .. HouseAdvice.Of(trials, load),
        ];
        counted.Sort((a, b) => (b.Watts ?? 0).CompareTo(a.Watts ?? 0));
        return [.. counted, .. WettingAdvice.Of(trials), QuietHeapAdvice.Of(trials.Settings)];
    }
}
