using PileController.Settings;
using PileController.Units;

namespace PileController.Plans.Sketch.Advice;

/// <summary>What to do with a heap that has gone quiet, in the order in which it is cheapest to find out.</summary>
internal static class QuietHeapAdvice
{
    public static PlanWords Of(PileSettings settings) => Say.Both(
        "quietHeap",
        u => "If the heap has gone quiet, in this order. 1 Probe: push a second thermometer in beside it, a loose probe reads the air. "
            + "2 Draw: stop it for three days; if the turns warm again, it was drawn too hard. "
            + $"3 Moisture: a handful from {Show.Length(0.5, u)} deep; dusty wants water, dripping wants air. "
            + "4 Air: a sour smell means none; open the foot of the cover, loosen the top with a fork, never by climbing on it. "
            + $"5 Below {Show.Temperature(30, u)} all through it will not come back by itself: turn it with fresh greens or build anew. "
            + $"If it is hot instead, above {Show.Temperature(settings.Control.Limits.HeapFireC, u)} or smoking: do not open it, keep people away, call the fire service. "
            + Say.LocalCodes);
}
