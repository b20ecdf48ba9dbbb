using CsCheck;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Plants;

/// <summary>Whatever can be set can be simulated: nothing rings, freezes into nonsense or loses heat without a trace.</summary>
public class AnyHoldingTests
{
    private static readonly Gen<CoilBuild> AnyCoil = Gen.Select(
        Gen.Double[0, 6], Gen.Double[0, 1], Gen.Double[0.004, 0.1], Gen.Double[0.5, 0.95],
        (radius, share, diameter, bore) => new CoilBuild
        {
            RadiusM = radius,
            LengthM = share * 1000,
            OuterDiameterM = diameter,
            InnerDiameterM = Math.Max(0.003, bore * diameter),
        });

    private static readonly Gen<DuctBuild> AnyDuct = Gen.Select(
        Gen.Double[0, 6], Gen.Double[0, 200], Gen.Double[0.05, 0.5], Gen.Double[0, 2], Gen.Bool,
        (radius, length, diameter, flow, through) => new DuctBuild
        {
            RadiusM = radius,
            LengthM = length,
            DiameterM = diameter,
            FullFlowM3PerS = flow,
            ThroughHeap = through,
        });

    internal static readonly Gen<HeapBuild> AnyHeap = Gen.Select(
        Gen.Select(Gen.Double[0.5, 6], Gen.Double[0.5, 4.5], Gen.Double[150, 1100], Gen.Double[0.2, 0.8]),
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[0, 0.5], Gen.Double[-5, 60], Gen.Double[-11, -6]),
        Gen.Select(Gen.Double[0, 1], Gen.Int[4, 60], Gen.Double[0, 1]),
        AnyCoil,
        AnyDuct,
        (body, stuff, shape, coil, duct) =>
        {
            (double radius, double height, double density, double moisture) = body;
            double volumeM3 = Math.PI * radius * radius * height;

            // As the settings allow: turns three diameters apart at most, a drum below half of the volume.
            double longest = 2 * Math.PI * coil.RadiusM * height / (3 * coil.OuterDiameterM);
            double drum = Math.Min(2000, shape.Item3 * 400 * volumeM3);
            return new HeapBuild
            {
                RadiusM = radius,
                HeightM = height,
                WetMassKg = density * volumeM3,
                MoistureFraction = moisture,
                FastFraction = stuff.Item1,
                SlowFraction = stuff.Item2,
                BuildTemperatureC = stuff.Item3,
                PermeabilityM2 = Math.Pow(10, stuff.Item4),
                CoverThicknessM = shape.Item1,
                Shells = shape.Item2,
                DrumLitres = drum < 1 ? 0 : drum,
                Coil = coil with { LengthM = Math.Min(coil.LengthM, longest) },
                Duct = duct,
            };
        });

    private static readonly Gen<LoopBuild> AnyLoop = Gen.Select(
        Gen.Double[0, 200], Gen.Double[0, 5], Gen.Double[0.003, 0.1], Gen.Double[0, 1000], Gen.Double[0, 20],
        Gen.Select(Gen.Double[0, 5000], Gen.Double[0, 200], Gen.Double[0.5, 200]),
        (line, loss, bore, pipe, gives, rest) => new LoopBuild
        {
            LineLengthM = line,
            LineLossWPerMK = loss,
            LineInnerDiameterM = bore,
            HousePipeM = pipe,
            HousePipeWPerMK = gives,
            TankLitres = rest.Item1 < 100 ? 0 : rest.Item1,
            TankLossWPerK = rest.Item2,
            PumpFreeFlowLitresPerMinute = rest.Item3,
        });

    [Fact]
    public void AnyHolding_UnderRandomHands_StaysPhysicalAndCloses() =>
        Gen.Select(AnyHeap, AnyLoop, Gen.Int[0, 1_000_000]).Sample((heap, loop, seed) =>
        {
            PlantBuild build = new(heap, new HouseBuild(), loop, new PowerBuild { BatteryWattHours = 0 });
            WeatherSeries weather = Weathers.Of("New York");
            Plant plant = new(build, weather, Plant.Fresh(build, weather, Weathers.FirstOfNovember("New York", 2012) + (seed * 10_000L)));
            double heapJ = plant.Heap.StoredJ;
            double loopJ = plant.LoopStoredJ;
            double houseJ = plant.HouseStoredJ;
            RandomHands hands = new(seed);
            for (int minute = 0; minute < 3 * 1440; minute++)
            {
                plant.Step(hands.Minute(), 60);
                Check(plant, heap);
            }

            HeapState state = plant.Heap.Snapshot();
            Assert.All(state.WaterKg, kg => Assert.True(kg >= 0));
            Assert.All(state.FastKg.Concat(state.SlowKg).Concat(state.InertKg), kg => Assert.True(kg >= 0));
            AssertCloses(Balance.Heap(heapJ, plant.Heap), heapJ);
            AssertCloses(Balance.Loop(loopJ, plant), loopJ);
            AssertCloses(Balance.House(houseJ, plant), houseJ);
        }, iter: 60);

    // Nothing is hotter than dying microbes or a heater's house, nor colder than the winter less what drying air takes.
    private static void Check(Plant plant, HeapBuild heap)
    {
        double[] celsius =
        [
            plant.HouseC, plant.FloorC, plant.SupplyC, plant.ReturnC, plant.TankC, plant.DuctAirC, plant.ColdestLineC,
            plant.Heap.WallC, plant.Heap.NearTurnsC, plant.Heap.DrumC, plant.Heap.ActiveZoneC, plant.Heap.TurnsShellC,
            plant.Heap.DuctShellC, plant.Heap.AtRadiusC(0), plant.Heap.AtRadiusC(heap.RadiusM),
        ];
        if (!celsius.All(t => t is > -35 and < 80))
        {
            Assert.Fail(string.Join(" ", celsius.Select(t => t.ToString("F1"))) + " " + heap);
        }
    }

    private static void AssertCloses(Balance balance, double storedJ) =>
        Assert.InRange(balance.Missing(), 0, 1e-9 * (balance.Fluxes.Values.Sum(Math.Abs) + Math.Abs(storedJ)));
}
