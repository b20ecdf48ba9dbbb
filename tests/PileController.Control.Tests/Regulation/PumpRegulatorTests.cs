using CsCheck;
using PileController.Control.Regulation;

namespace PileController.Control.Tests.Regulation;

public sealed class PumpRegulatorTests
{
    private const long Hour = 3_600_000;
    private static readonly ControlSettings Settings = new();

    [Fact]
    public void Step_SmallGrant_StartsOnlyWhenEnoughHasGathered()
    {
        RegulatorMemory memory = default;
        double duty = 0;
        int ticks = 0;
        while (duty == 0)
        {
            (duty, memory) = PumpRegulator.Step(Settings, memory, 500, false, 0, 0, 10, Hour);
            ticks++;
        }

        // 1.5 MJ at 500 W.
        Assert.Equal(300, ticks);
        Assert.Equal(0.5, duty);
    }

    [Fact]
    public void Step_UrgentGrant_StartsSooner()
    {
        (double duty, _) = PumpRegulator.Step(Settings, new RegulatorMemory { WaterCreditJoules = 0.1e6 }, 500, true, 0, 0, 10, Hour);

        Assert.Equal(0.5, duty);
    }

    [Theory]
    [InlineData(299_990, 0)]
    [InlineData(300_000, 0.5)]
    public void Step_AfterAStop_RestsItsTime(long rested, double expected)
    {
        RegulatorMemory memory = new() { WaterCreditJoules = 3e6, PumpSinceMilliseconds = Hour };

        Assert.Equal(expected, PumpRegulator.Step(Settings, memory, 2000, true, 0, 0, 10, Hour + rested).Duty);
    }

    [Theory]
    [InlineData(299_990, true)]
    [InlineData(300_000, false)]
    public void Step_GrantGone_RunsItsLeastTimeOut(long ran, bool runs)
    {
        RegulatorMemory memory = new() { PumpDuty = 0.5, PumpSinceMilliseconds = Hour };

        Assert.Equal(runs, PumpRegulator.Step(Settings, memory, 0, false, 1000, 2, 10, Hour + ran).Duty > 0);
    }

    [Fact]
    public void Step_CreditOverdrawn_StopsThoughSomethingIsGranted()
    {
        RegulatorMemory memory = new() { PumpDuty = 0.35, WaterCreditJoules = -1.5e6 };

        Assert.Equal(0, PumpRegulator.Step(Settings, memory, 300, false, 2000, 1.4, 10, Hour).Duty);
    }

    [Theory]
    [InlineData(3000, 1000, 1)]
    [InlineData(1000, 3000, -1)]
    public void Step_DrawOffTheGrant_MovesTheDutyTowardIt(double grant, double draw, int sign)
    {
        RegulatorMemory memory = new() { PumpDuty = 0.6, DrawWatts = draw };

        Assert.Equal(sign, Math.Sign(PumpRegulator.Step(Settings, memory, grant, false, draw, 2.4, 10, Hour).Duty - 0.6));
    }

    [Theory]
    [InlineData(4.1, -1)]
    [InlineData(0.9, 1)]
    public void Step_FlowOutsideItsBand_TurnsBackWhateverTheGrant(double flow, int sign)
    {
        RegulatorMemory memory = new() { PumpDuty = 0.6, DrawWatts = 2000 };

        Assert.Equal(
            sign, Math.Sign(PumpRegulator.Step(Settings, memory, 2000 + (sign * -500), false, 2000, flow, 10, Hour).Duty - 0.6));
    }

    [Fact]
    public void Step_NothingGrantedForLong_DropsTheCreditAndKeepsTheDebt()
    {
        Assert.Equal(0, Credit(2e6));
        Assert.Equal(-1e6, Credit(-1e6));

        static double Credit(double before) => PumpRegulator.Step(
            Settings, new RegulatorMemory { WaterCreditJoules = before }, 0, false, 0, 0, 10, Hour).Memory.WaterCreditJoules;
    }

    [Fact]
    public void Step_LoopThatLiftsItsWater_StartsAndStaysAboveTheDutyThatMovesIt()
    {
        ControlSettings lifting = Settings with { MovingDuty = 0.62 };
        (double start, _) = PumpRegulator.Step(lifting, new RegulatorMemory { WaterCreditJoules = 3e6 }, 500, true, 0, 0, 10, Hour);
        RegulatorMemory running = new() { PumpDuty = 0.63, DrawWatts = 3000 };
        (double slowed, _) = PumpRegulator.Step(lifting, running, 500, true, 3000, 2, 10, Hour);

        Assert.Equal(0.62, start);
        Assert.Equal(0.62, slowed);
    }

    [Fact]
    public void Step_AnyGrantsAndDraws_CreditStaysBoundedAndTheDutySlews() =>
        Gen.Select(Gen.Double[0, 20_000], Gen.Double[-5000, 20_000], Gen.Double[0, 8], Gen.Double[1, 60]).Array[1, 200].Sample(steps =>
        {
            RegulatorMemory memory = default;
            long now = Hour;
            foreach ((double grant, double draw, double flow, double seconds) in steps)
            {
                now += (long)(seconds * 1000);
                double before = memory.PumpDuty;
                (double duty, memory) = PumpRegulator.Step(Settings, memory, grant, true, draw, flow, seconds, now);
                Assert.InRange(memory.WaterCreditJoules, -3e6, 3e6);
                Assert.True(duty is 0 or (>= 0.35 and <= 1));
                if (before > 0 && duty > 0)
                {
                    Assert.True(Math.Abs(duty - before) <= (Settings.DutySlewPerSecond * seconds) + 1e-12);
                }

                memory = memory with { PumpDuty = duty };
            }
        });
}
