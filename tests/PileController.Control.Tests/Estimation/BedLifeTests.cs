using PileController.Control.Estimation;
using PileController.Physics.Heaps;

namespace PileController.Control.Tests.Estimation;

public sealed class BedLifeTests
{
    // Latent heat of water at saturation, J/kg: steam tables (IAPWS-IF97), from memory.
    [Theory]
    [InlineData(25, 2.4417e6)]
    [InlineData(50, 2.3819e6)]
    [InlineData(60, 2.3577e6)]
    public void Of_DryAirThroughABedThatMakesNothing_CoolsItByTheLatentHeatOfWhatItDries(double celsius, double latentJPerKg)
    {
        // The air is as warm as the bed, so that it carries off vapour alone.
        OutsideAir dry = new(1.1, Stuff.GasJPerKgK * celsius, 0);
        BedLife life = BedLife.Of(0, celsius, BedCurves.At(celsius), 2e-4, dry);

        double driedKgPerM3S = 2e-4 * BedCurves.At(celsius).VapourPerGas;
        Assert.Equal(driedKgPerM3S * Stuff.WaterJPerKgK, life.SpentWPerM3K, 1e-9);
        Assert.Equal(latentJPerKg, -life.WattsPerM3 / driedKgPerM3S, 0.003 * latentJPerKg);
    }

    [Fact]
    public void Of_AirAsMoistAndWarmAsTheBed_LeavesWhatBurningTakesAndItsWater()
    {
        BedAt bed = BedCurves.At(50);
        OutsideAir same = new(1.1, bed.GasJPerKg, bed.VapourPerGas);
        BedLife life = BedLife.Of(40, 50, bed, 1e-3, same);

        // Burnt wood takes its heat capacity with it and leaves the water it makes (90 kg from 162 of cellulose).
        double burntKgPerM3S = (life.WattsPerM3 - (50 * life.SpentWPerM3K)) / Stuff.HeatPerSolids;
        Assert.InRange(burntKgPerM3S, 1e-9, 40 / Stuff.HeatPerSolids);
        Assert.Equal(burntKgPerM3S * (1400 - (4186 * 90.0 / 162)), life.SpentWPerM3K, 1e-12);
    }

    [Fact]
    public void Of_ColdAir_TakesTheMoreTheWarmerTheBed()
    {
        OutsideAir cold = OutsideAir.At(-5);
        double before = double.PositiveInfinity;
        for (int celsius = 0; celsius <= 70; celsius += 10)
        {
            double watts = BedLife.Of(0, celsius, BedCurves.At(celsius), 2e-4, cold).WattsPerM3;
            Assert.True(watts < before && watts < 0, $"{watts} W/m³ at {celsius} °C");
            before = watts;
        }
    }
}
