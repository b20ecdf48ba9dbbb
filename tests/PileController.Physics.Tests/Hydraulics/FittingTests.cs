using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class FittingTests
{
    [Theory]

    // Crane TP-410 valves as computed by the fluids library 1.3.1 (K_gate_valve_Crane and its like), full bore.
    [InlineData("gate-valve", 0.0525, 0.1507793)]
    [InlineData("globe-valve", 0.0525, 6.40812)]
    [InlineData("ball-valve", 0.0525, 0.05654224)]
    [InlineData("check-valve", 0.0525, 0.9423707)]
    [InlineData("gate-valve", 0.1023, 0.1296629)]
    [InlineData("globe-valve", 0.1023, 5.510674)]
    [InlineData("ball-valve", 0.1023, 0.0486236)]
    public void Loss_OfAValve_IsCranes(string name, double boreM, double published) =>
        Assert.Equal(1, Fitting.Find(name)!.LossK(boreM) / published, 0.01);

    [Fact]
    public void Loss_InAFinerBore_IsGreater() => Assert.All(
        Fitting.All.Where(fitting => fitting.FrictionMultiple > 0),
        fitting => Assert.True(fitting.LossK(0.01) > fitting.LossK(0.02), fitting.Name));

    [Theory]
    [InlineData("Tee Branch", "tee-branch")]
    [InlineData("elbows", "elbow")]
    [InlineData(" ball_valve ", "ball-valve")]
    public void Find_OfAnotherSpelling_IsTheSameFitting(string written, string name) => Assert.Equal(name, Fitting.Find(written)?.Name);

    [Fact]
    public void Find_OfAnUnknownName_IsNone() => Assert.Null(Fitting.Find("wye"));
}
