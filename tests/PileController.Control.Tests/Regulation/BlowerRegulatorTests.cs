using PileController.Control.Regulation;

namespace PileController.Control.Tests.Regulation;

public sealed class BlowerRegulatorTests
{
    private const long Hour = 3_600_000;
    private static readonly ControlSettings Settings = new();

    [Theory]
    [InlineData(149, 1000, 0)]
    [InlineData(400, 1000, 0.3)]
    [InlineData(800, 0, 0)]
    public void Step_Standing_StartsAtItsLeastDutyForAWorthwhileGrant(double grant, double reach, double expected) =>
        Assert.Equal(expected, Duty(default, grant, reach, 0, Hour));

    [Fact]
    public void Step_JustStopped_Rests() => Assert.Equal(
        0, Duty(new RegulatorMemory { BlowerSinceMilliseconds = Hour }, 800, 1000, 0, Hour + 299_999));

    [Theory]
    [InlineData(299_999, 0.3)]
    [InlineData(300_000, 0)]
    public void Step_GrantGone_RunsItsLeastTimeOut(long ran, double expected) => Assert.Equal(
        expected,
        Duty(new RegulatorMemory { BlowerDuty = 0.3, BlowerSinceMilliseconds = Hour }, 0, 1000, 300, Hour + ran));

    [Theory]
    [InlineData(1000, 0.7)]
    [InlineData(0.001, 0.3)]
    public void Step_Running_SlewsTowardTheShareOfWhatTheAirCarries(double grant, double expected) => Assert.Equal(
        expected,
        Duty(new RegulatorMemory { BlowerDuty = 0.5, BlowerSinceMilliseconds = Hour, AirYieldWatts = 1000 }, grant, 2000, 500, Hour),
        1e-12);

    [Fact]
    public void Step_GrantBelowItsLeast_IsMetByRunsInTheMean()
    {
        // At its least duty of 0.3 the air carries 300 W; 200 W are granted.
        RegulatorMemory memory = default;
        long now = Hour;
        double drawn = 0;
        int starts = 0;
        for (int tick = 0; tick < 24 * 360; tick++)
        {
            now += 10_000;
            RegulatorMemory worn = Allotment.Worn(memory, PumpDrive.Duty, 10);
            (double duty, RegulatorMemory next) = BlowerRegulator.Step(
                Settings, worn, 200, 1000, false, 1000 * memory.BlowerDuty, 10, now);
            bool turned = duty > 0 != memory.BlowerDuty > 0;
            starts += turned && duty > 0 ? 1 : 0;
            memory = next with
            {
                BlowerDuty = duty,
                BlowerStarts = next.BlowerStarts + (turned && duty > 0 ? 1 : 0),
                BlowerSinceMilliseconds = turned ? now : memory.BlowerSinceMilliseconds,
            };
            drawn += 1000 * duty * 10;
        }

        Assert.Equal(200, drawn / 86_400, 10.0);
        Assert.InRange(starts, 6, 12);
    }

    private static double Duty(RegulatorMemory memory, double grant, double reach, double draw, long now) =>
        BlowerRegulator.Step(Settings, memory with { AirCreditJoules = memory.BlowerDuty > 0 ? 0 : 2e6 }, grant, reach, false, draw, 10, now).Duty;
}
