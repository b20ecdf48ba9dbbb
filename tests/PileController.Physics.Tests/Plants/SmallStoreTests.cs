using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Plants;

/// <summary>Stores so small that a step could take more from them than they hold: they must settle, not ring.</summary>
public class SmallStoreTests
{
    private const double HeapC = 45;

    private static readonly HeapBuild Dead = new()
    {
        FastFraction = 0,
        SlowFraction = 0,
        PermeabilityM2 = 0,
        BuildTemperatureC = HeapC,
    };

    // A wide, short loop: nearly all of the pump's 200 L/min goes round.
    private static readonly LoopBuild Torrent = new()
    {
        LineLengthM = 1,
        HousePipeM = 1,
        LineInnerDiameterM = 0.1,
        PumpFreeFlowLitresPerMinute = 200,
        TankLitres = 0,
    };

    [Fact]
    public void Tank_TurnedOverWithinAStep_DoesNotSwingPastTheLinesWater() =>
        Settles(
            Dead with { DrumLitres = 0, Coil = new CoilBuild { LengthM = 0 } },
            Torrent with { LineLengthM = 200 },
            least: 100,
            fresh => fresh with { Loop = fresh.Loop with { TankC = HeapC } });

    [Fact]
    public void Drum_TurnedOverWithinAStep_StaysBetweenHeapAndHouse() =>
        Settles(
            Dead with { DrumLitres = 1, Coil = new CoilBuild { InnerDiameterM = 0.09, OuterDiameterM = 0.1, LengthM = 10 } },
            Torrent with { TankLitres = 2000 },
            least: 100);

    [Fact]
    public void DuctShell_SmallerThanTheBlast_StaysBetweenHeapAndHouse() =>
        Settles(
            Dead with
            {
                RadiusM = 0.5,
                HeightM = 0.5,
                WetMassKg = 150,
                Shells = 60,
                DrumLitres = 0,
                Coil = new CoilBuild { LengthM = 0 },
                Duct = new DuctBuild { RadiusM = 0, LengthM = 200, DiameterM = 0.5, FullFlowM3PerS = 2 },
            },
            new LoopBuild(),
            least: 0);

    [Fact]
    public void CoilShell_FullOfPipe_StaysBetweenHeapAndHouse() =>
        Settles(
            Dead with
            {
                RadiusM = 0.5,
                HeightM = 1,
                WetMassKg = 400,
                Shells = 60,
                DrumLitres = 0,
                Coil = new CoilBuild { RadiusM = 0.45, LengthM = 9.4, OuterDiameterM = 0.1, InnerDiameterM = 0.09 },
            },
            new LoopBuild(),
            least: 0);

    private static void Settles(HeapBuild heap, LoopBuild loop, double least, Func<PlantState, PlantState>? change = null)
    {
        PlantBuild build = PlantVariant.Holding(heap) with { Loop = loop };
        WeatherSeries weather = Weathers.Of("New York");
        PlantState fresh = Plant.Fresh(build, weather, Weathers.FirstOfNovember("New York", 2012));
        Plant plant = new(build, weather, change?.Invoke(fresh) ?? fresh);
        double heapJ = plant.Heap.StoredJ;
        double loopJ = plant.LoopStoredJ;
        for (int step = 0; step < 6 * 360; step++)
        {
            plant.Step(new PlantInputs(1, 1, 1, false, 0), 10);
            double[] celsius =
            [
                plant.SupplyC, plant.ReturnC, plant.TankC, plant.DuctAirC, plant.HouseC, plant.Heap.WallC, plant.Heap.DrumC,
                plant.Heap.DuctShellC, plant.Heap.TurnsShellC,
            ];
            Assert.All(celsius, t => Assert.InRange(t, 0, HeapC + 1e-6));
        }

        Assert.True(plant.FlowLitresPerMinute >= least, $"{plant.FlowLitresPerMinute:F1} L/min");
        Assert.InRange(Balance.Heap(heapJ, plant.Heap).Missing(), 0, 1e-9 * heapJ);
        Assert.InRange(Balance.Loop(loopJ, plant).Missing(), 0, 1e-9 * Balance.Loop(loopJ, plant).Fluxes.Values.Sum(Math.Abs));
    }
}
