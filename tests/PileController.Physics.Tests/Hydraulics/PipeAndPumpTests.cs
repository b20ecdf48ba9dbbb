using CsCheck;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class PipeAndPumpTests
{
    [Fact]
    public void Churchill_InLaminarFlow_IsSixtyFourOverReynolds() =>
        Gen.Double[1, 1500].Sample(re => Math.Abs((Friction.Churchill(re, 0) * re / 64) - 1) < 1e-3);

    [Fact]
    public void Churchill_InTurbulentFlow_SolvesColebrookNearly() =>
        // Churchill rests on the same asymptotes as Colebrook and White; both ways agree within 3 % (from memory).
        Gen.Select(Gen.Double[4.1, 7], Gen.Double[0, 0.02]).Sample((logRe, roughness) =>
        {
            double re = Math.Pow(10, logRe);
            double f = Friction.Churchill(re, roughness);
            double colebrook = -2 * Math.Log10((roughness / 3.7) + (2.51 / (re * Math.Sqrt(f))));
            return Math.Abs((1 / Math.Sqrt(f) / colebrook) - 1) < 0.03;
        });

    [Fact]
    public void Loss_OfFlowReversed_IsReversed()
    {
        var run = new PipeRun(10, 0.012, 3);
        Assert.Equal(-run.LossPa(4, 20), run.LossPa(-4, 20));
        Assert.Equal(0, run.LossPa(0, 20));
    }

    [Fact]
    public void Loss_OfFittingsAlone_IsTheirKTimesTheVelocityHead()
    {
        var run = new PipeRun(0, 0.012, 2.5);
        double velocity = Flow.VelocityMPerS(5, 0.012);
        Assert.Equal(2.5 * velocity * velocity / (2 * Flow.GravityMPerS2), run.HeadM(5, 20), 1e-12);
    }

    [Fact]
    public void OperatingPoint_OfAnyDuty_HasPumpAndCircuitAtOneHead() =>
        Gen.Select(Gen.Double[0.2, 1], Gen.Double[1, 90]).Sample((duty, waterC) =>
        {
            PipeRun[] runs = [new(60, 0.017, 5, 0.2)];
            var pump = new PumpCurve(6, 30, 40);
            OperatingPoint point = OperatingPoint.Of(pump, duty, runs, waterC);
            double circuit = runs[0].HeadM(point.FlowLitresPerMinute, waterC);
            return Math.Abs(point.HeadM - circuit) < 1e-6 || (point.FlowLitresPerMinute == 0 && circuit >= point.HeadM);
        });

    [Fact]
    public void OperatingPoint_BelowTheLift_IsNoFlowYetTakesPower()
    {
        OperatingPoint point = OperatingPoint.Of(new PumpCurve(2, 10, 20), 1, [new PipeRun(5, 0.012, 0, 3)], 20);
        Assert.Equal(0, point.FlowLitresPerMinute);
        Assert.Equal(20, point.Watts);
        Assert.Equal(480, point.WattHoursPerDay);
        Assert.Equal(double.PositiveInfinity, point.WattsPerLitrePerMinute);
    }

    [Fact]
    public void PumpFit_OfPointsFromACurve_FindsThatCurve()
    {
        var curve = new PumpCurve(5, 20, 30);
        PumpPoint[] points =
        [
            new(0, curve.HeadM(0, 1), 30),
            new(8, curve.HeadM(8, 0.7), curve.Watts(0.7), 0.7),
            new(15, curve.HeadM(15, 1), 30),
        ];
        PumpCurve found = PumpFit.Fit(points, 0.1);
        Assert.Equal(5, found.ShutoffHeadM, 1e-12);
        Assert.Equal(20, found.FreeFlowLitresPerMinute, 1e-12);
        Assert.Equal(30, found.FullWatts, 1e-12);
    }

    [Fact]
    public void PumpFit_OfPointsThatCannotBeAPump_SaysWhy()
    {
        Assert.Contains("2 points", Assert.Throws<ArgumentException>(() => PumpFit.Fit([new(0, 5, 10)])).Message);
        Assert.Contains("fall", Assert.Throws<ArgumentException>(() => PumpFit.Fit([new(0, 5, 10), new(5, 6, 10)])).Message);
        Assert.Contains("given 0", Assert.Throws<ArgumentException>(() => PumpFit.Fit([new(0, 5, 10, 0), new(5, 4, 10)])).Message);
    }

    [Fact]
    public void PipeSize_OfAnUnknownName_ListsTheKnownOnes() =>
        Assert.Contains("1/2 in PEX", Assert.Throws<ArgumentException>(() => PipeSize.Named("2 in lead")).Message);
}
