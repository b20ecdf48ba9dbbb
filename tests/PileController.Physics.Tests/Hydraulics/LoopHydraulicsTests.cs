using CsCheck;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class LoopHydraulicsTests
{
    private static readonly PumpCurve Pump = new(8, 12, 22, 0.15);

    private static readonly PipeRun[] Runs =
    [
        new(144, 0.012065, 12),
        new(90, 0.017043, 4),
    ];

    private static readonly LoopHydraulics Loop = new(Pump, Runs);

    [Fact]
    public void Flow_AtAnyDutyAndWarmth_IsThatOfTheExactOperatingPoint() =>
        Gen.Select(Gen.Double[0.15, 1], Gen.Double[0, 95]).Sample((duty, waterC) =>
        {
            double exact = OperatingPoint.Of(Pump, duty, Runs, waterC).FlowLitresPerMinute;
            return Math.Abs(Loop.FlowLitresPerMinute(duty, waterC) - exact) < 2e-3 * exact;
        });

    [Fact]
    public void Flow_AgainstALift_IsThatOfTheExactOperatingPoint() =>
        Gen.Select(Gen.Double[0.15, 1], Gen.Double[0, 4]).Sample((duty, lift) =>
        {
            PipeRun[] runs = [Runs[0] with { StaticLiftM = lift }, Runs[1]];
            double exact = OperatingPoint.Of(Pump, duty, runs, 30).FlowLitresPerMinute;
            return Math.Abs(new LoopHydraulics(Pump, runs).FlowLitresPerMinute(duty, 30) - exact) < (2e-3 * exact) + 1e-6;
        }, iter: 30);

    [Fact]
    public void Flow_WithMoreDuty_NeverFalls() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 95]).Sample((a, b, waterC) =>
            a <= b == (Loop.FlowLitresPerMinute(a, waterC) <= Loop.FlowLitresPerMinute(b, waterC))
            || Loop.FlowLitresPerMinute(a, waterC) == Loop.FlowLitresPerMinute(b, waterC));

    [Fact]
    public void Flow_ThroughAThrottle_FallsToNothingAsItShuts()
    {
        double last = Loop.FlowLitresPerMinute(1, 40);
        Assert.Equal(last, Loop.FlowLitresPerMinute(1, 40, Throttle.LossK(1)), 1e-12);
        foreach (double open in new[] { 0.7, 0.4, 0.2, 0.05, 0.01 })
        {
            double flow = Loop.FlowLitresPerMinute(1, 40, Throttle.LossK(open));
            Assert.True(flow < last, $"{flow} L/min at {open} open, {last} before");
            last = flow;
        }

        Assert.Equal(0, Loop.FlowLitresPerMinute(1, 40, Throttle.LossK(0)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.149)]
    public void Flow_BelowTheStartDuty_IsNone(double duty) => Assert.Equal(0, Loop.FlowLitresPerMinute(duty, 20));

    [Fact]
    public void Duty_AboveOne_IsRefusedByName()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Loop.FlowLitresPerMinute(1.2, 20));
        Assert.Contains("duty must lie from 0 to 1", error.Message);
    }

    [Fact]
    public void Flow_ThroughACrawlingLoop_FollowsPoiseuille()
    {
        // A pump so weak that the flow is laminar: head = 128 μ L Q / (π ρ g d⁴).
        var weak = new PumpCurve(0.02, 1000, 1);
        var run = new PipeRun(100, 0.02);
        double flow = new LoopHydraulics(weak, [run]).FlowLitresPerMinute(1, 20);
        double head = 128 * 1.0016e-3 * 100 * (flow / 60_000) / (Math.PI * 998.2 * 9.80665 * Math.Pow(0.02, 4));
        Assert.Equal(0.02, head, 0.02 * 2e-3);
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.3)]
    [InlineData(0.7)]
    [InlineData(1)]
    public void OpenShare_OfTheLossOfAnOpening_IsThatOpening(double share) =>
        Assert.Equal(share, Throttle.OpenShare(Throttle.LossK(share)), 1e-12);
}
