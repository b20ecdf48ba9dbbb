using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

/// <summary>Chain and RadialGrid against solutions on paper, and the orders with which they come nearer to them.</summary>
public class ConductionTests
{
    private const double FilmWPerM2K = 0.8;
    private const double HeatWPerM3 = 60;
    private const double AmbientC = 3;

    private static double Biot => FilmWPerM2K * Rod.RadiusM / Rod.WPerMK;

    [Theory]
    [InlineData(14)]
    [InlineData(60)]
    public void SteadyCylinder_ThatMakesHeatEvenly_AgreesWithItsFormula(int shells)
    {
        Rod rod = new(shells, FilmWPerM2K, HeatWPerM3, AmbientC, AmbientC);
        Settle(rod);

        // The inner faces are exact for a parabola; the half shell at the rim leaves q·d²/(16k): 0.11 K of 141 K with 14 shells.
        double rimK = HeatWPerM3 * rod.Grid.ThicknessM * rod.Grid.ThicknessM / (16 * Rod.WPerMK);
        Assert.InRange(rod.WorstK(SteadyC), 0, 1.001 * rimK);
        Assert.InRange(SteadyC(0) - AmbientC, 140, 141);
    }

    [Fact]
    public void SteadyCylinder_OnFinerGrids_IsOfSecondOrder()
    {
        double[] errors = [.. new[] { 8, 16, 32, 64 }.Select(shells =>
        {
            Rod rod = new(shells, FilmWPerM2K, HeatWPerM3, AmbientC, AmbientC);
            Settle(rod);
            return rod.WorstK(SteadyC);
        })];
        AssertOrders(errors, 1.8, 2.2);
    }

    [Fact]
    public void CoolingCylinder_ItsFirstRoot_IsTheTabulatedOne()
    {
        // Incropera's table for a cylinder gives 1.2558 at Bi 1 (from memory).
        Assert.Equal(1.2558, new CoolingCylinder(1, 1).FirstRoot, 5e-5);
    }

    [Fact]
    public void CoolingCylinder_Cooling_FollowsTheSeries()
    {
        CoolingCylinder known = new(Biot, 20);
        foreach (double fourier in new[] { 0.05, 0.2, 0.5, 1.0 })
        {
            Rod rod = new(60, FilmWPerM2K, 0, 60, AmbientC);
            rod.Step(Seconds(fourier) / 4000, 4000);
            Assert.InRange(rod.WorstK(r => AmbientC + (57 * known.Left(fourier, r / Rod.RadiusM))), 0, 0.02);
        }
    }

    [Fact]
    public void CoolingCylinder_OnFinerGrids_IsOfSecondOrder()
    {
        CoolingCylinder known = new(Biot, 20);
        double[] errors = [.. new[] { 6, 12, 24 }.Select(shells =>
        {
            // Steps so short that what time adds is a thousandth of what the grid adds.
            Rod rod = new(shells, FilmWPerM2K, 0, 60, AmbientC);
            rod.Step(Seconds(0.2) / 200_000, 200_000);
            return rod.WorstK(r => AmbientC + (57 * known.Left(0.2, r / Rod.RadiusM)));
        })];
        AssertOrders(errors, 1.8, 2.2);
    }

    [Fact]
    public void CoolingCylinder_InShorterSteps_IsOfFirstOrder()
    {
        double[] centre = [.. new[] { 100, 200, 400, 800 }.Select(steps =>
        {
            Rod rod = new(30, FilmWPerM2K, 0, 60, AmbientC);
            rod.Step(Seconds(0.2) / steps, steps);
            return rod.TemperatureC[0];
        })];
        AssertOrders([.. centre.Zip(centre.Skip(1), (coarse, fine) => Math.Abs(coarse - fine))], 0.9, 1.1);
    }

    [Fact]
    public void Chain_OneNodeCooling_FollowsTheBackwardStep()
    {
        Chain chain = new(1);
        chain.CapacityJPerK[0] = 1000;
        chain.AmbientWPerK[0] = 5;
        chain.AmbientC[0] = 10;
        chain.SourceW[0] = 20;
        chain.TemperatureC[0] = 50;
        chain.Step(40);

        // By hand: (1000·50/40 + 5·10 + 20) / (1000/40 + 5) = 1320/30.
        Assert.Equal(44, chain.TemperatureC[0], 1e-12);
    }

    [Fact]
    public void RadialGrid_OfAnyCut_KeepsTheRingsVolume()
    {
        RadialGrid grid = new(0.2, 1.9, 2, 14);
        Assert.Equal(Math.PI * ((1.9 * 1.9) - 0.04) * 2, grid.VolumeM3.Sum(), 1e-12);
        Assert.Equal(0, grid.ShellAt(0));
        Assert.Equal(13, grid.ShellAt(5));
        Assert.Equal(grid.CentreM[6], grid.At(grid.CentreM[6], grid.CentreM), 1e-12);
    }

    [Theory]
    [InlineData(-0.1, 1, 1, 4)]
    [InlineData(1, 1, 1, 4)]
    [InlineData(0, 1, 0, 4)]
    [InlineData(0, 1, 1, 0)]
    public void RadialGrid_OfImpossibleSize_IsRefused(double inner, double outer, double height, int shells) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new RadialGrid(inner, outer, height, shells));

    // T = T∞ + qR/(2h) + q(R² − r²)/(4k): Incropera, Fundamentals of Heat and Mass Transfer (from memory).
    private static double SteadyC(double radiusM) =>
        AmbientC + (HeatWPerM3 * Rod.RadiusM / (2 * FilmWPerM2K))
        + (HeatWPerM3 * ((Rod.RadiusM * Rod.RadiusM) - (radiusM * radiusM)) / (4 * Rod.WPerMK));

    private static double Seconds(double fourier) => fourier * Rod.RadiusM * Rod.RadiusM * Rod.JPerM3K / Rod.WPerMK;

    private static void Settle(Rod rod) => rod.Step(1e9, 100);

    private static void AssertOrders(double[] errors, double least, double most) =>
        Assert.All(errors.Zip(errors.Skip(1), (coarse, fine) => Math.Log2(coarse / fine)), order => Assert.InRange(order, least, most));
}
