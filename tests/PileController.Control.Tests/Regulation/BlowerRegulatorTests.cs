using PileController.Control.Regulation;

namespace PileController.Control.Tests.Regulation;

public sealed class BlowerRegulatorTests
{
    private const long Hour = 3_600_000;
    private static readonly ControlSettings Settings = new();

    [Theory]
    [InlineData(149, 1000, 0)]
    [InlineData(150, 1000, 0.3)]
    [InlineData(800, 0, 0)]
    public void Step_Standing_StartsAtItsLeastDutyForAWorthwhileGrant(double grant, double reach, double expected) =>
        Assert.Equal(expected, BlowerRegulator.Step(Settings, default, grant, reach, 10, Hour));

    [Fact]
    public void Step_JustStopped_Rests() => Assert.Equal(
        0, BlowerRegulator.Step(Settings, new RegulatorMemory { BlowerSinceMilliseconds = Hour }, 800, 1000, 10, Hour + 299_999));

    [Theory]
    [InlineData(299_999, 0.3)]
    [InlineData(300_000, 0)]
    public void Step_GrantGone_RunsItsLeastTimeOut(long ran, double expected) => Assert.Equal(
        expected,
        BlowerRegulator.Step(Settings, new RegulatorMemory { BlowerDuty = 0.3, BlowerSinceMilliseconds = Hour }, 0, 1000, 10, Hour + ran));

    [Theory]
    [InlineData(1000, 0.7)]
    [InlineData(0.001, 0.3)]
    public void Step_Running_SlewsTowardTheShareOfItsReach(double grant, double expected) => Assert.Equal(
        expected, BlowerRegulator.Step(Settings, new RegulatorMemory { BlowerDuty = 0.5 }, grant, 1000, 10, Hour), 1e-12);

    [Fact]
    public void Step_ReachGone_FallsToItsLeastDuty() => Assert.Equal(
        0.3, BlowerRegulator.Step(Settings, new RegulatorMemory { BlowerDuty = 0.4 }, 500, 0, 10, Hour), 1e-12);
}
