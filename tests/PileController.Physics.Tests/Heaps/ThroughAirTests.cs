using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Physics.Tests.Plants;

namespace PileController.Physics.Tests.Heaps;

/// <summary>Air drawn through the heap takes water with it, and most of the heat is in the water.</summary>
public class ThroughAirTests
{
    private const double OutsideC = 10;
    private const double HeapC = 55;

    private const double CubicFeetPerMinute = 0.028316846592 / 60;
    private const double BlowerM3PerS = 8 * CubicFeetPerMinute;

    private static readonly DuctBuild Blower = new() { LengthM = 0, ThroughHeap = true, FullFlowM3PerS = BlowerM3PerS };

    private static readonly HeapBuild Dead = new()
    {
        FastFraction = 0, SlowFraction = 0, PermeabilityM2 = 0, BuildTemperatureC = HeapC, Duct = Blower,
    };

    [Theory]
    [InlineData(50, "AIR-065", "AIR-066")]
    [InlineData(60, "AIR-067", "AIR-068")]
    [InlineData(65, "AIR-069", "AIR-070")]
    public void AirDrawn_ThroughAWarmHeap_TakesTheReferenceHeatAndWater(double heapC, string heatRow, string waterRow)
    {
        IReadOnlyDictionary<string, ReferenceRow> rows = ReferenceRow.Read("moist-air");
        Heap heap = new(Dead with { BuildTemperatureC = heapC });
        heap.StepSlow(60, new HeapSite(OutsideC, 0.5, 0, OutsideC, 100 * CubicFeetPerMinute));
        rows[heatRow].Check(heap.ThroughAirW / 1000);
        rows[waterRow].Check((heap.Ledger.VapourOutKg - heap.Ledger.VapourInKg) * 60);
    }

    [Fact]
    public void AirDrawn_ThroughAWarmHeap_AgreesWithMoistAir()
    {
        Heap heap = new(Dead);
        heap.StepSlow(60, new HeapSite(OutsideC, 0.7, 0, OutsideC, BlowerM3PerS));

        double dryKgPerS = BlowerM3PerS / MoistAir.SpecificVolumeM3PerKg(OutsideC, Ratio(OutsideC, 0.7));
        double heatW = dryKgPerS
            * (MoistAir.EnthalpyJPerKg(HeapC, Ratio(HeapC, 1)) - MoistAir.EnthalpyJPerKg(OutsideC, Ratio(OutsideC, 0.7)));
        double waterKgPerS = dryKgPerS * (Ratio(HeapC, 1) - Ratio(OutsideC, 0.7));

        // What is left is the fit of the fast saturation curve.
        Assert.Equal(heatW, heap.ThroughAirW, 0.001 * heatW);
        Assert.Equal(waterKgPerS * 60, heap.Ledger.VapourOutKg - heap.Ledger.VapourInKg, 0.001 * waterKgPerS * 60);

        // Dry air alone would carry less than a seventh of it.
        Assert.True(heap.ThroughAirW > 7 * dryKgPerS * 1006 * (HeapC - OutsideC));
    }

    [Fact]
    public void AirDrawn_WithAStandingBlower_IsNone()
    {
        Heap heap = new(Dead);
        heap.StepSlow(60, new HeapSite(OutsideC, 0.7, 3, OutsideC, 0));
        Assert.Equal(0, heap.ThroughAirW);
        Assert.Equal(0, heap.Ledger.ThroughAirJ);
    }

    [Fact]
    public void House_HeatedByAMightyExhaust_IsNeverWarmerThanIt()
    {
        // A gale through a hot heap into a hut: a condenser cannot warm the air beyond what it condenses.
        HeapBuild heap = Dead with { Duct = Blower with { FullFlowM3PerS = 0.5 } };
        HouseBuild hut = new() { FloorAreaM2 = 4, GlazingAreaM2 = 8, VolumeM3 = 8 };
        PlantBuild build = PlantVariant.Holding(heap) with { House = hut };
        WeatherSeries weather = Weathers.Of("New York");
        Plant plant = new(build, weather, Plant.Fresh(build, weather, Weathers.FirstOfNovember("New York", 2012)));
        double hottest = 0;
        for (int minute = 0; minute < 300; minute++)
        {
            plant.Step(new PlantInputs(0, 0, 1, false, 0), 60);
            Assert.True(plant.HouseC < HeapC, $"{plant.HouseC:F1} °C at minute {minute}");
            hottest = Math.Max(hottest, plant.HouseC);
        }

        Assert.True(hottest > 25);
    }

    private static double Ratio(double celsius, double humidity) =>
        MoistAir.HumidityRatioFromRelative(celsius, humidity);
}
