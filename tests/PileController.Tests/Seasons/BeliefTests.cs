using PileController.Control;
using PileController.Control.Estimation;
using PileController.Physics.Heaps;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;
using Xunit.Abstractions;

namespace PileController.Tests.Seasons;

/// <summary>What the observer has come to believe of the heap by midwinter, beside the simulated heap itself.</summary>
public sealed class BeliefTests(ITestOutputHelper output)
{
    private const double TickSeconds = 60;

    [Theory]
    [InlineData(1)]
    [InlineData(1.4)]
    public void Season_OuterBedHasDriedAndBurnt_ItsHeatCapacityIsKnownRingByRing(double toldShare)
    {
        ControlSettings standard = PileSettings.AlderBank.Control;
        ControlSettings told = standard with { HeapHeatCapacityJPerK = toldShare * standard.HeapHeatCapacityJPerK, TickSeconds = TickSeconds };
        Holding holding = Midwinter(told);
        Heap heap = holding.Plant.Heap;
        HeapState state = heap.Snapshot();
        HeapShape shape = new(told);
        HeapFigures believed = holding.Memory.Estimator.Belief!.Learned(HeapFigures.Told(told, shape));
        double least = double.PositiveInfinity;
        double most = 0;
        for (int shell = 0; shell < heap.Grid.CentreM.Length; shell++)
        {
            double dryKg = state.FastKg[shell] + state.SlowKg[shell] + state.InertKg[shell];
            double trueJPerM3K = ((dryKg * Stuff.SolidsJPerKgK) + (state.WaterKg[shell] * Stuff.WaterJPerKgK)) / heap.Grid.VolumeM3[shell];
            int ring = shape.RingAt(heap.Grid.CentreM[shell]);
            output.WriteLine($"{heap.Grid.CentreM[shell]:F2} m: {trueJPerM3K / 1e6:F3}, believed {believed.JPerM3KOf(ring) / 1e6:F3} MJ/(m³·K)");

            // The pipe's sleeve takes its bed from the shell it lies in.
            if (ring != shape.CoilRing)
            {
                Assert.Equal(trueJPerM3K, believed.JPerM3KOf(ring), 0.1 * trueJPerM3K);
                least = Math.Min(least, trueJPerM3K);
                most = Math.Max(most, trueJPerM3K);
            }
        }

        Assert.True(least < 0.8 * most, "The bed has not dried unevenly enough to tell.");
    }

    private static Holding Midwinter(ControlSettings told)
    {
        PileSettings settings = PileSettings.AlderBank;
        const string file = "new-york-daily-2012-2013.csv";
        using StreamReader reader = new(Path.Combine(AppContext.BaseDirectory, "Weather", file));
        WeatherSeries weather = WeatherFile.Read(reader, file, HoldingBuild.Place(settings));
        const int days = 85;
        SeasonPlan plan = SeasonPlanning.Of(settings, told, weather, new DateOnly(2012, 11, 1), days);
        Holding holding = new(plan.Build, plan.Control, plan.Rig, weather, plan.OffsetMinutes, plan.StartUtcMilliseconds, 30);
        for (int i = 0; i < days * 86_400 / TickSeconds; i++)
        {
            holding.Tick(holding.Read(), []);
        }

        return holding;
    }
}
