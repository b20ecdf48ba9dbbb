using CsCheck;
using PileController.Physics.Exchangers;

namespace PileController.Physics.Tests.Exchangers;

/// <summary>Limits that follow from the definitions alone.</summary>
public class ExchangerLimitTests
{
    private static readonly Gen<double> TransferUnits = Gen.Double[0.01, 20];
    private static readonly Gen<double> Ratios = Gen.Double[0, 1];

    [Fact]
    public void Effectiveness_OfASmallExchanger_IsItsTransferUnits()
    {
        Assert.Equal(1e-12, Effectiveness.OneSideIsothermal(1e-12), 1e-22);
        Assert.Equal(1e-8, Effectiveness.Counterflow(1e-8, 0.5), 1e-15);
        Assert.Equal(1e-8, Effectiveness.ParallelFlow(1e-8, 0.5), 1e-15);
    }

    [Fact]
    public void Effectiveness_OfAnEndlessExchanger_IsAllThatItsFlowAllows()
    {
        Assert.Equal(1, Effectiveness.OneSideIsothermal(double.PositiveInfinity));
        Assert.Equal(1, Effectiveness.Counterflow(double.PositiveInfinity, 1));
        Assert.Equal(1 / 1.7, Effectiveness.ParallelFlow(double.PositiveInfinity, 0.7), 1e-15);
    }

    [Fact]
    public void Effectiveness_WithOneStreamEndless_IsThatOfAnIsothermalSide() =>
        TransferUnits.Sample(n =>
        {
            double expected = Effectiveness.OneSideIsothermal(n);
            return Math.Abs(Effectiveness.Counterflow(n, 0) - expected) < 1e-14 && Math.Abs(Effectiveness.ParallelFlow(n, 0) - expected) < 1e-14;
        });

    [Fact]
    public void Counterflow_WithEqualStreams_TendsToItsLimit() =>
        TransferUnits.Sample(n => Math.Abs(Effectiveness.Counterflow(n, 1 - 1e-7) - (n / (1 + n))) < 1e-6
            && Math.Abs(Effectiveness.Counterflow(n, 1) - (n / (1 + n))) < 1e-15);

    [Fact]
    public void Counterflow_OfAnyExchanger_PassesAtLeastWhatParallelFlowDoes() =>
        Gen.Select(TransferUnits, Ratios).Sample((n, ratio) => Effectiveness.Counterflow(n, ratio) >= Effectiveness.ParallelFlow(n, ratio) - 1e-15);

    [Fact]
    public void Counterflow_HeatPassed_IsConductanceTimesTheLogMeanDifference() =>
        Gen.Select(Gen.Double[0.1, 5], Gen.Double[0.1, 0.95]).Sample((n, ratio) =>
        {
            // Hot 80 °C is the smaller stream of 1 W/K, cold enters at 20 °C.
            double heat = Effectiveness.Counterflow(n, ratio) * 60;
            double mean = MeanDifference.LogMeanK(80 - (20 + (heat * ratio)), (80 - heat) - 20);
            return Math.Abs((n * mean) - heat) < 1e-8 * heat;
        });

    [Fact]
    public void LogMean_OfNearlyEqualEnds_LeavesNoStepWhereTheSeriesTakesOver()
    {
        double below = MeanDifference.LogMeanK(40 * (1 + 0.99e-5), 40);
        double above = MeanDifference.LogMeanK(40 * (1 + 1.01e-5), 40);
        Assert.Equal(40 * 1e-7, above - below, 1e-9);
        Assert.Equal(0, MeanDifference.LogMeanK(0, 10));
    }

    [Fact]
    public void SoakedRun_WithNoFlow_ComesOutAsItsSurroundingsAndCarriesNothing()
    {
        Assert.Equal(60, SoakedRun.OutletC(20, 60, 50, 0));
        Assert.Equal(0, SoakedRun.HeatWatts(20, 60, 50, 0));
        Assert.Equal(20, SoakedRun.OutletC(20, 60, 0, 0));
    }

    [Fact]
    public void SoakedRun_WithAGreatFlow_TakesConductanceTimesDifference() =>
        Assert.Equal(50 * 40, SoakedRun.HeatWatts(20, 60, 50, 1e9), 1e-3);

    [Fact]
    public void Nusselt_AcrossTheTransition_HasNoStep() =>
        Gen.Select(Gen.Double[2000, 3500], Gen.Double[1, 13]).Sample(
            (reynolds, prandtl) => Math.Abs(TubeFilm.Nusselt(reynolds + 0.1, prandtl) - TubeFilm.Nusselt(reynolds, prandtl)) < 0.02);

    [Theory]
    [InlineData(0.5, 0.559773594776160)]
    [InlineData(1.0, 0.219383934395520)]
    [InlineData(2.0, 0.0489005107080611)]
    [InlineData(10.0, 4.15696892968532e-6)]
    public void E1_AtRoundArguments_AgreesWithAMultiplePrecisionEvaluation(double x, double expected) =>
        Assert.Equal(1, ExponentialIntegral.E1(x) / expected, 1e-12);

    [Fact]
    public void ClosedDuct_ThatIsLong_BringsItsAirToTheBed()
    {
        var duct = new ClosedDuct(400, 0.15);
        double capacity = ClosedDuct.CapacityRateWPerK(0.02, 10);
        Assert.Equal(capacity * 40, duct.HeatWatts(0.02, 10, 50, 2), capacity * 40 * 1e-6);
    }

    [Fact]
    public void ClosedDuct_WithNoAir_CarriesNothing() => Assert.Equal(0, new ClosedDuct(12, 0.15).HeatWatts(0, 10, 50, 2));

    [Fact]
    public void Layer_TurnedInsideOut_NamesTheField()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Surroundings.LayerMKPerW(0.02, 0.01, 0.4));
        Assert.Equal("outerDiameterM", error.ParamName);
    }

    [Fact]
    public void LateLineSource_TooEarly_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Surroundings.LineSourceLateWPerMK(0.008, 0.4, 2.5e6, 60));
}
