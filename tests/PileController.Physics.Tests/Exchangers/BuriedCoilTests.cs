using CsCheck;
using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Exchangers;

public class BuriedCoilTests
{
    private const double Day = 86_400;
    private const double Gallon = 3.785411784;

    private static readonly BuriedCoil Coil = new(PipeSize.Named("1/2 in PEX"), 100);

    [Theory]

    // HTX-029 to HTX-033: line-source conductance of half-inch PEX, 4πk/E₁(r²/4at), computed from the formula, W/(m·K).
    [InlineData(0.25, 1.0432)]
    [InlineData(1, 0.8106)]
    [InlineData(7, 0.617)]
    [InlineData(30, 0.5235)]
    [InlineData(120, 0.4575)]
    public void Bed_AfterDaysOfDraw_ResistsAsTheLineSource(double days, double published) =>
        Assert.Equal(1 / published, Coil.After(Gallon, 40, 60, days * Day).BedMKPerW, 0.01 / published);

    [Fact]
    public void Draw_AfterAMonth_IsThatOfItsResistancesInSeries()
    {
        // By hand from HTX-032 (bed 1/0.5235), HTX-034 (wall 0.1065) and the film of warm water (0.008): 0.494 W/(m·K), 100 m;
        // HTX-035's stream is 262 W/K, so NTU 0.1886 and the outlet 40 + 20·(1 − e^−0.1886).
        CoilDraw draw = Coil.After(Gallon, 40, 60, 30 * Day);
        Assert.Equal(0.1886, draw.Ntu, 0.002);
        Assert.Equal(43.44, draw.OutletC, 0.05);
        Assert.Equal(draw.DrawWatts, Water.MassFlowKgPerS(Gallon, 40) * (Water.EnthalpyJPerKg(draw.OutletC) - Water.EnthalpyJPerKg(40)), 1e-2);
    }

    [Fact]
    public void Draw_AsItGoesOn_Falls() =>
        Gen.Select(Gen.Double[0.01, 300], Gen.Double[1.1, 3]).Sample((days, times) =>
            Coil.After(4, 30, 60, days * times * Day).DrawWatts < Coil.After(4, 30, 60, days * Day).DrawWatts);

    [Fact]
    public void Outlet_OfAnyCoil_LiesBetweenInletAndHeap() =>
        Gen.Select(Gen.Double[0.1, 40], Gen.Double[1, 90], Gen.Double[1, 90], Gen.Double[0.1, 2000]).Sample((flow, inletC, heapC, lengthM) =>
        {
            double outletC = (Coil with { LengthM = lengthM }).After(flow, inletC, heapC, Day).OutletC;
            return outletC >= Math.Min(inletC, heapC) && outletC <= Math.Max(inletC, heapC);
        });

    [Fact]
    public void Outlet_OfAVeryLongCoil_IsNotRoundedPastTheHeap() =>
        Assert.InRange((Coil with { LengthM = 1000 }).After(11.0 / 54, 45, 25.0 / 22, Day).OutletC, 25.0 / 22, 45);

    [Fact]
    public void Draw_FromAColderHeap_GoesTheOtherWay() => Assert.True(Coil.After(4, 60, 30, Day).DrawWatts < 0);
}
