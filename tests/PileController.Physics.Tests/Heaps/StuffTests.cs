using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

public class StuffTests
{
    [Fact]
    public void Reaction_OfCellulose_KeepsItsMass()
    {
        // C6H10O5 + 6 O2 -> 6 CO2 + 5 H2O with whole molar masses: 162 + 192 = 264 + 90.
        Assert.Equal(264.0 / 162, Stuff.CarbonDioxidePerSolids, 1e-12);
        Assert.Equal(1 + Stuff.OxygenPerSolids, Stuff.CarbonDioxidePerSolids + Stuff.WaterPerSolids, 1e-12);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(40)]
    [InlineData(70)]
    public void Conductivity_OfTheShippedBed_LiesInThePublishedRange(double celsius)
    {
        HeapBuild heap = new();
        double volumeM3 = Math.PI * heap.RadiusM * heap.RadiusM * heap.HeightM;
        double waterKgPerM3 = heap.WetMassKg * heap.MoistureFraction / volumeM3;
        double solids = heap.WetMassKg * (1 - heap.MoistureFraction) / volumeM3 / Stuff.SolidsKgPerM3;

        // 0.12 to 0.81 W/(m·K) for compost blends: Ahn, Sauer, Richard, Glanville 2009, Bioresource Technology 100:3974-3981.
        double k = Stuff.ConductivityWPerMK(
            waterKgPerM3, 1 - solids - (waterKgPerM3 / 1000), celsius, MoistAir.SaturationPressurePa(celsius));
        Assert.InRange(k, 0.12, 0.81);
    }

    [Fact]
    public void Conductivity_OfAWarmerOrWetterBed_IsGreater()
    {
        Assert.True(At(200, 60) > At(200, 20));
        Assert.True(At(300, 20) > At(200, 20));
    }

    private static double At(double waterKgPerM3, double celsius) =>
        Stuff.ConductivityWPerMK(waterKgPerM3, 0.6, celsius, MoistAir.SaturationPressurePa(celsius));
}
