using System.Collections.Concurrent;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Plants;

/// <summary>A winter of 150 days in New York with actuators moved at random, one for each variant, run once for all tests.</summary>
internal sealed class Season
{
    public const int Days = 150;

    private static readonly ConcurrentDictionary<string, Lazy<Season>> Runs = new();

    private Season(string variant)
    {
        PlantBuild build = PlantVariant.Of(variant);
        WeatherSeries weather = Weathers.Of("New York");
        Plant = new Plant(build, weather, Plant.Fresh(build, weather, Weathers.FirstOfNovember("New York", 2012)));
        HeapBeforeJ = Plant.Heap.StoredJ;
        LoopBeforeJ = Plant.LoopStoredJ;
        HouseBeforeJ = Plant.HouseStoredJ;
        DryBeforeKg = Plant.Heap.DryKg;
        WaterBeforeKg = Plant.Heap.WaterKg;
        RandomHands hands = new(2012);
        for (int minute = 0; minute < Days * 1440; minute++)
        {
            Plant.Step(hands.Minute(), 60);
        }
    }

    public Plant Plant { get; }

    public double HeapBeforeJ { get; }

    public double LoopBeforeJ { get; }

    public double HouseBeforeJ { get; }

    public double DryBeforeKg { get; }

    public double WaterBeforeKg { get; }

    public static Season Of(string variant) =>
        Runs.GetOrAdd(variant, name => new Lazy<Season>(() => new Season(name))).Value;
}
