namespace PileController.Plans.Sketch.Advice;

/// <summary>What to change and what it brings: every figure is the difference of two reckonings, the best first, what is not worth it last.</summary>
internal static class Advising
{
    public static IReadOnlyList<PlanWords> Of(SketchTrials trials, SketchCoil coil, HouseLoad load)
    {
        List<PlanWords> counted =
        [
            .. TurnsAdvice.Of(trials, coil), .. HeapAdvice.Of(trials), .. LoopAdvice.Of(trials), .. AirAdvice.Of(trials),
            .. HouseAdvice.Of(trials, load),
        ];
        PlanWords[] best = [.. counted.OrderByDescending(a => a.Watts ?? 0)];
        return [.. best.Where(a => a.Worth), .. WettingAdvice.Of(trials), QuietHeapAdvice.Of(trials.Settings), .. best.Where(a => !a.Worth)];
    }
}
