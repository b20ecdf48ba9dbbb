using CsCheck;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class WoundFrictionTests
{
    private static readonly Gen<double> Curvatures = Gen.Double[0.002, 0.1];

    [Fact]
    public void Friction_OfAlmostStraightPipe_IsThatOfStraightPipe()
    {
        Assert.Equal(Friction.Laminar(1000), WoundFriction.Factor(1000, 0, 1e-5), 1e-3 * Friction.Laminar(1000));
        Assert.Equal(Friction.Churchill(1e5, 0), WoundFriction.Factor(1e5, 0, 1e-6), 2e-3 * Friction.Churchill(1e5, 0));
    }

    [Fact]
    public void Friction_OfTighterTurns_IsTheGreater() =>
        Gen.Select(Gen.Double[30_000, 1e6], Curvatures, Curvatures).Where((_, a, b) => a < b).Sample((reynolds, wide, tight) =>
            WoundFriction.Factor(reynolds, 0, tight) > WoundFriction.Factor(reynolds, 0, wide));

    [Fact]
    public void Loss_WithMoreFlow_NeverFalls() =>
        Gen.Select(Gen.Double[100, 40_000], Curvatures).Sample((reynolds, curvature) =>
            WoundFriction.Factor(1.01 * reynolds, 1e-4, curvature) * 1.01 * 1.01 > WoundFriction.Factor(reynolds, 1e-4, curvature));

    [Fact]
    public void Run_InTurns_CostsMoreThanStraight()
    {
        // Half-inch PEX in turns of 1.8 m at 4 L/min and 20 °C: Re 7013, so 28 800/7013 · (12.065/1800)^0.62 = 0.184 more.
        PipeRun straight = new(90, 0.012065);
        PipeRun wound = straight with { TurnDiameterM = 1.8 };
        Assert.Equal(1.184, wound.LossPa(4, 20) / straight.LossPa(4, 20), 2e-3);
        Assert.Equal(straight.LossPa(4, 20), (straight with { TurnDiameterM = 0 }).LossPa(4, 20));
    }

    [Fact]
    public void SimulatedLoop_WithTurns_FindsTheSameFlow()
    {
        PipeRun[] runs = [new PipeRun(90, 0.012065) { TurnDiameterM = 1.8 }];
        PumpCurve pump = new(8, 12, 22);
        double exact = OperatingPoint.Of(pump, 1, runs, 20).FlowLitresPerMinute;
        Assert.Equal(exact, new LoopHydraulics(pump, runs).FlowLitresPerMinute(1, 20), 2e-3 * exact);
    }
}
