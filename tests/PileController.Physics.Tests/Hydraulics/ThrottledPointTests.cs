using CsCheck;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class ThrottledPointTests
{
    private static readonly PumpCurve Pump = new(8, 12, 22);

    private static readonly PipeRun[] Runs = [new(60, 0.012065, 6, 0.5), new(30, 0.017043, 3)];

    [Fact]
    public void Throttled_WideOpen_IsThePlainPoint() =>
        Assert.Equal(OperatingPoint.Of(Pump, 1, Runs, 30), OperatingPoint.Throttled(Pump, 1, Runs, 30, 1));

    [Fact]
    public void Throttled_Shut_HasNoFlowAndTheShutOffHead()
    {
        OperatingPoint point = OperatingPoint.Throttled(Pump, 0.5, Runs, 30, 0);
        Assert.Equal(0, point.FlowLitresPerMinute);
        Assert.Equal(2, point.HeadM, 1e-12);
    }

    [Fact]
    public void Throttled_MoreClosed_GivesLessFlowAtMoreHead() =>
        Gen.Select(Gen.Double[0.02, 0.9], Gen.Double[0.02, 0.9]).Where((a, b) => b - a > 0.02).Sample((less, more) =>
        {
            OperatingPoint closed = OperatingPoint.Throttled(Pump, 1, Runs, 30, less);
            OperatingPoint open = OperatingPoint.Throttled(Pump, 1, Runs, 30, more);
            return closed.FlowLitresPerMinute < open.FlowLitresPerMinute && closed.HeadM > open.HeadM;
        });

    [Fact]
    public void Throttled_AtAnyOpening_IsWhatTheSimulatedLoopFinds() =>
        Gen.Double[0.05, 1].Sample(open =>
        {
            double exact = OperatingPoint.Throttled(Pump, 1, Runs, 30, open).FlowLitresPerMinute;
            double simulated = new LoopHydraulics(Pump, Runs).FlowLitresPerMinute(1, 30, Throttle.LossK(open));
            return Math.Abs(exact - simulated) < 2e-3 * exact;
        }, iter: 30);

    [Fact]
    public void HydraulicPower_OfAnyPoint_IsWeightTimesHeight()
    {
        // 6 L/min of 998.2 kg/m³ (20 °C) lifted 5 m: 0.09982 kg/s × 9.80665 m/s² × 5 m.
        Assert.Equal(4.8945, new OperatingPoint(6, 5, 20).HydraulicWatts(20), 1e-3);
    }

    [Fact]
    public void WattHours_OfPartOfADay_AreHoursTimesPower()
    {
        OperatingPoint point = new(6, 5, 20);
        Assert.Equal(point.WattHoursPerDay, point.WattHours(24));
        Assert.Equal(100, point.WattHours(5));
        Assert.Throws<ArgumentOutOfRangeException>(() => point.WattHours(25));
    }

    [Fact]
    public void Transit_OfARun_IsItsWaterOverItsFlow()
    {
        // Half-inch PEX holds π/4 · (12.065 mm)² · 100 m = 11.433 L.
        PipeRun run = new(100, 0.012065);
        Assert.Equal(11.433, run.Litres, 1e-3);
        Assert.Equal(171.49, run.TransitSeconds(4), 0.01);
        Assert.Equal(double.PositiveInfinity, run.TransitSeconds(0));
    }
}
