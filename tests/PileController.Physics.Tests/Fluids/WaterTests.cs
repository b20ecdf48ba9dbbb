using CsCheck;
using PileController.Physics.Fluids;

namespace PileController.Physics.Tests.Fluids;

public class WaterTests
{
    [Fact]
    public void Enthalpy_AnywhereInRange_HasTheSpecificHeatAsItsSlope() =>
        Gen.Double[0.02, 94.98].Sample(t =>
        {
            double slope = (Water.EnthalpyJPerKg(t + 0.01) - Water.EnthalpyJPerKg(t - 0.01)) / 0.02;
            return Math.Abs(slope - Water.SpecificHeatJPerKgK(t)) < 1e-3;
        });

    [Fact]
    public void Viscosity_WithWarmth_AlwaysFalls() =>
        Gen.Select(Gen.Double[0, 95], Gen.Double[0, 95]).Where((a, b) => Math.Abs(a - b) > 1e-6).Sample(
            (a, b) => (a < b) == (Water.ViscosityPaS(a) > Water.ViscosityPaS(b)));

    [Fact]
    public void Density_OfColdWater_IsGreatestNearFourDegrees()
    {
        double best = Enumerable.Range(0, 101).MaxBy(i => Water.DensityKgPerM3(i * 0.1)) * 0.1;
        Assert.InRange(best, 3.5, 4.5); // 3.98 °C (from memory)
    }

    [Fact]
    public void Draw_WithSupplyAndReturnExchanged_ChangesSignOnly() =>
        Assert.Equal(-Water.DrawWatts(3, 20, 50, 40), Water.DrawWatts(3, 20, 40, 50));

    [Theory]
    [InlineData(-0.01)]
    [InlineData(95.01)]
    [InlineData(double.NaN)]
    public void Water_OutsideTheLiquidRange_NamesValueAndRange(double temperatureC)
    {
        Func<double, double>[] members =
        [
            Water.DensityKgPerM3, Water.SpecificHeatJPerKgK, Water.EnthalpyJPerKg, Water.ViscosityPaS, Water.ConductivityWPerMK, Water.Prandtl,
        ];
        foreach (Func<double, double> member in members)
        {
            var error = Assert.Throws<ArgumentOutOfRangeException>(() => member(temperatureC));
            Assert.Equal("temperatureC", error.ParamName);
            Assert.Contains("from 0 to 95 °C", error.Message);
            Assert.Contains($"given {temperatureC}", error.Message);
        }
    }
}
