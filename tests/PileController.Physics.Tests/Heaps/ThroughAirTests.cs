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

    // 8 ft³/min of outside air.
    private const double BlowerM3PerS = 8 * 0.028316846592 / 60;

    private static readonly DuctBuild Blower = new() { LengthM = 0, ThroughHeap = true, FullFlowM3PerS = BlowerM3PerS };

    private static readonly HeapBuild Dead = new()
    {
        FastFraction = 0, SlowFraction = 0, PermeabilityM2 = 0, BuildTemperatureC = HeapC, Duct = Blower,
    };

    [Fact]
    public void AirDrawn_ThroughAWarmHeap_LeavesSaturated()
    {
        Heap heap = new(Dead);
        heap.StepSlow(60, new HeapSite(OutsideC, 0.7, 0, OutsideC, BlowerM3PerS));

        double dryKgPerS = BlowerM3PerS / MoistAir.SpecificVolumeM3PerKg(OutsideC, Ratio(OutsideC, 0.7));
        double latentAndSensibleW = dryKgPerS
            * (MoistAir.EnthalpyJPerKg(HeapC, Ratio(HeapC, 1)) - MoistAir.EnthalpyJPerKg(OutsideC, Ratio(OutsideC, 0.7)));
        double waterKgPerS = dryKgPerS * (Ratio(HeapC, 1) - Ratio(OutsideC, 0.7));

        // Within the fit of the fast saturation curve and the whole molar masses.
        Assert.Equal(latentAndSensibleW, heap.ThroughAirW, 0.005 * latentAndSensibleW);
        Assert.Equal(waterKgPerS * 60, heap.Ledger.VapourOutKg - heap.Ledger.VapourInKg, 0.005 * waterKgPerS * 60);

        // Dry air alone would carry less than an eighth of it.
        Assert.True(heap.ThroughAirW > 8 * dryKgPerS * 1006 * (HeapC - OutsideC));
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
