using CsCheck;
using PileController.Physics.Fluids;

namespace PileController.Physics.Tests.Fluids;

public class MoistAirTests
{
    private static readonly Gen<double> Temperatures = Gen.Double[-40, 90];
    private static readonly Gen<double> Humidities = Gen.Double[0.01, 1];

    [Fact]
    public void FastSaturationPressure_OverItsWholeRange_StaysWithinItsStatedError() =>
        Gen.Double[-40, 95].Sample(
            t => Math.Abs((MoistAir.SaturationPressureFastPa(t) / MoistAir.SaturationPressurePa(t)) - 1) <= 4e-6, iter: 20_000);

    [Fact]
    public void DewPoint_OfAnyAir_IsWhereThatAirIsSaturated() =>
        Gen.Select(Temperatures, Humidities).Sample((t, humidity) =>
        {
            double vapour = humidity * MoistAir.SaturationPressurePa(t);
            return Math.Abs((MoistAir.SaturationPressurePa(MoistAir.DewPointC(vapour)) / vapour) - 1) < 1e-4;
        });

    [Fact]
    public void WetBulb_OfAnyAir_LiesBetweenDewPointAndDryBulb() =>
        Gen.Select(Gen.Double[1, 90], Humidities).Sample((t, humidity) =>
        {
            AirState air = MoistAir.State(t, humidity);
            return air.DewPointC - 1e-6 <= air.WetBulbC && air.WetBulbC <= t + 1e-6;
        });

    [Fact]
    public void WetBulb_PutBackWithItsDryBulb_GivesTheHumidityRatio() =>
        Gen.Select(Gen.Double[10, 80], Gen.Double[0.3, 0.99]).Sample((t, humidity) =>
        {
            AirState air = MoistAir.State(t, humidity);
            return Math.Abs(MoistAir.HumidityRatioFromWetBulb(t, air.WetBulbC) - air.HumidityRatioKgPerKg) < 1e-8;
        });

    [Fact]
    public void WetBulb_AboveFreezing_ClosesTheHeatOfTheWaterTakenUp() =>
        Gen.Select(Gen.Double[0, 30], Gen.Double[1, 10]).Sample(
            (wetC, above) => Math.Abs(LiquidTakenUpJPerKg(wetC + above, wetC) - (4186 * wetC)) < 1);

    [Fact]
    public void WetBulb_BelowFreezing_ClosesTheHeatOfTheIceTakenUp() =>
        // Enthalpy of ice −333.4 + 2.1·t kJ/kg (from memory); ASHRAE's rounded coefficients stand for −329.
        Gen.Select(Gen.Double[-15, -0.1], Gen.Double[0.5, 2]).Sample(
            (wetC, above) => Math.Abs(LiquidTakenUpJPerKg(wetC + above, wetC) - (-333_400 + (2100 * wetC))) < 5000);

    [Fact]
    public void State_OfSaturatedAir_HasAllThreeTemperaturesAlike()
    {
        AirState air = MoistAir.State(55, 1);
        Assert.Equal(55, air.DewPointC, 1e-6);
        Assert.Equal(55, air.WetBulbC, 1e-6);
    }

    [Fact]
    public void Density_OfWarmMoistAir_IsLessThanOfDryAirAsWarm() =>
        Gen.Double[0, 80].Sample(
            t => MoistAir.DensityKgPerM3(t, MoistAir.SaturatedHumidityRatio(t)) < MoistAir.DensityKgPerM3(t, 0));

    [Fact]
    public void DewPoint_OfDryAir_IsTheLowestTemperature() => Assert.Equal(-100, MoistAir.DewPointC(0));

    [Fact]
    public void HumidityRatio_AtTheBoilingPoint_NamesTheLimit()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.SaturatedHumidityRatio(100.5));
        Assert.Equal("vapourPressurePa", error.ParamName);
    }

    [Fact]
    public void RelativeHumidity_InPercent_IsRefused()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => MoistAir.State(20, 80));
        Assert.Contains("relativeHumidity must lie from 0 to 1", error.Message);
    }

    // Air saturated adiabatically down to its wet bulb: what each kg of water taken up must have brought along.
    private static double LiquidTakenUpJPerKg(double dryC, double wetC)
    {
        double before = MoistAir.HumidityRatioFromWetBulb(dryC, wetC);
        double after = MoistAir.SaturatedHumidityRatio(wetC);
        return (MoistAir.EnthalpyJPerKg(wetC, after) - MoistAir.EnthalpyJPerKg(dryC, before)) / (after - before);
    }
}
