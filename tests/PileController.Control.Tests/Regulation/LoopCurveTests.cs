using CsCheck;
using PileController.Control.Regulation;

namespace PileController.Control.Tests.Regulation;

public sealed class LoopCurveTests
{
    private static readonly Gen<LoopCurve> AnyCurve = Gen.Select(
        Gen.Double[0.5, 20], Gen.Double[0, 0.8], Gen.Double[10, 5000],
        (full, still, loss) => new LoopCurve { FullFlowLitresPerMinute = full, StillDuty = still, LossK = loss });

    [Fact]
    public void DutyFor_AnyFlowWithinReach_GivesThatFlow() => Gen.Select(AnyCurve, Gen.Double[0.01, 1]).Sample((curve, share) =>
    {
        double flow = share * curve.FullFlowLitresPerMinute;

        Assert.Equal(flow, curve.FlowLitresPerMinute(curve.DutyFor(flow), 1), 1e-9 * flow);
    });

    [Fact]
    public void OpeningFor_AnyFlowBetweenLeastOpeningAndOpen_GivesThatFlow() => Gen.Select(AnyCurve, Gen.Double[0.1, 1]).Sample((curve, opening) =>
    {
        double flow = curve.FlowLitresPerMinute(1, opening);

        Assert.Equal(flow, curve.FlowLitresPerMinute(1, curve.OpeningFor(flow, 1)), 1e-6 * flow);
    });

    [Fact]
    public void Flow_ShutOrBelowTheLift_IsNone()
    {
        Assert.Equal(0, new LoopCurve().FlowLitresPerMinute(1, 0));
        Assert.Equal(0, new LoopCurve { StillDuty = 0.6 }.FlowLitresPerMinute(0.6, 1));
    }
}
