using PileController.Physics.Sky.Weather;
using PileController.Plans.Sketch.Advice;
using PileController.Settings;

namespace PileController.Plans.Sketch;

/// <summary>Makes the sketch of a holding: pure, the same settings and weather give the same sketch.</summary>
internal static class PlanSketching
{
    /// <summary>The sketch.</summary>
    /// <param name="settings">The holding, checked.</param>
    /// <param name="weather">The weather; it must cover the days.</param>
    /// <param name="start">Local day on which the heap is built.</param>
    /// <param name="days">How many days, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weather does not cover the days, or there are none.</exception>
    public static PlanSketch Of(PileSettings settings, WeatherSeries weather, DateOnly start, int days)
    {
        SketchTrials trials = new(settings, weather, start, days);
        SketchHeap heap = HeapSketching.Of(trials);
        SketchCoil coil = CoilSketching.Of(trials);
        SketchLoop loop = LoopSketching.Of(trials);
        SketchAir air = AirSketching.Of(trials);
        HouseLoad load = HouseLoad.Of(trials);
        SketchHouse house = HouseSketching.Of(trials, load);
        return new PlanSketch(
            heap, coil, loop, air, house,
            Advising.Of(trials, coil, load), Claims.Of(trials, heap, house), Cautions.Of(trials, loop, air));
    }
}
