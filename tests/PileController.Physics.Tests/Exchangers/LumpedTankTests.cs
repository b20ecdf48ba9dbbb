using CsCheck;
using PileController.Physics.Exchangers;

namespace PileController.Physics.Tests.Exchangers;

public class LumpedTankTests
{
    private static readonly LumpedTank Drum = new(870_000, 16);

    [Fact]
    public void Tank_LeftAlone_DecaysByTheExponentialLaw() =>
        Gen.Double[0, 400_000].Sample(
            seconds => Math.Abs(Drum.After(60, 5, seconds) - (5 + (55 * Math.Exp(-seconds * 16 / 870_000)))) < 1e-11);

    [Fact]
    public void Tank_InTwoSteps_EndsAsInOne() =>
        Gen.Select(Gen.Double[0, 1e5], Gen.Double[0, 1e5], Gen.Double[0, 2000]).Sample(
            (a, b, watts) => Math.Abs(Drum.After(Drum.After(60, 5, a, watts), 5, b, watts) - Drum.After(60, 5, a + b, watts)) < 1e-10);

    [Fact]
    public void Tank_HeatedForLong_SettlesWhereLossMeetsHeat() => Assert.Equal(5 + (800.0 / 16), Drum.After(60, 5, 1e8, 800), 1e-9);

    [Fact]
    public void Tank_WithoutLoss_WarmsByHeatOverCapacity() => Assert.Equal(21, new LumpedTank(1000, 0).After(20, 0, 10, 100), 1e-12);

    [Fact]
    public void SecondsToReach_ThenThatLong_ArrivesThere() =>
        Gen.Double[6, 59].Sample(goal => Math.Abs(Drum.After(60, 5, Drum.SecondsToReach(60, goal, 5)) - goal) < 1e-9);

    [Theory]
    [InlineData(60, 60, 5, 0)]
    [InlineData(60, 5, 5, double.PositiveInfinity)]
    [InlineData(60, 70, 5, double.PositiveInfinity)]
    [InlineData(60, 2, 5, double.PositiveInfinity)]
    public void SecondsToReach_AtTheEdges_SaysThereOrNever(double start, double goal, double surroundings, double expected) =>
        Assert.Equal(expected, Drum.SecondsToReach(start, goal, surroundings));
}
