using CsCheck;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Regulation;

namespace PileController.Control.Tests.Regulation;

public sealed class PumpRegulatorTests
{
    private const long Hour = 3_600_000;
    private static readonly ControlSettings Settings = new();

    // A litre a minute carries 1500 W, and the pump runs at 1.5 L/min.
    private static readonly RegulatorMemory Running = new()
    {
        PumpDuty = 1.5 / 3.05,
        ValveOpening = 1,
        WaterYieldWatts = 1500,
        PumpStarts = 1,
    };

    [Fact]
    public void Step_SmallGrantWithNoUrgency_StartsOnlyWhenEnoughHasGathered()
    {
        RegulatorMemory memory = new() { WaterYieldWatts = 1500 };
        double duty = 0;
        int ticks = 0;
        while (duty == 0)
        {
            (duty, _, memory) = Step(Settings, memory, 200, false, 0, 0, Hour);
            ticks++;
        }

        // Half of what 200 W are in two hours, less the slack of 3 % of that span.
        Assert.Equal(339, ticks);
    }

    [Fact]
    public void Step_ASlugStillRememberedAsWhatALitreCarries_DoesNotPutTheNextRunOffForEver()
    {
        ControlSettings relay = Settings with { Drive = PumpDrive.OnOff };
        RegulatorMemory memory = new() { WaterYieldWatts = 20_000 };
        double duty = 0;
        for (int ticks = 0; duty == 0; ticks++)
        {
            Assert.True(ticks < 1000, "The pump never starts.");
            (duty, _, memory) = Step(relay, memory, 500, false, 0, 0, Hour);
        }
    }

    [Fact]
    public void Step_UrgentGrant_StartsAtOnce() =>
        Assert.True(Step(Settings, new RegulatorMemory { WaterYieldWatts = 1500 }, 500, true, 0, 0, Hour).Duty > 0);

    [Theory]
    [InlineData(299_990, false)]
    [InlineData(300_000, true)]
    public void Step_AfterAStop_RestsItsTime(long rested, bool runs)
    {
        RegulatorMemory memory = new() { WaterCreditJoules = 3e6, PumpSinceMilliseconds = Hour };

        Assert.Equal(runs, Step(Settings, memory, 2000, true, 0, 0, Hour + rested).Duty > 0);
    }

    [Fact]
    public void Step_StartsNotWornOff_WaitsUnlessUrgent()
    {
        RegulatorMemory memory = new() { WaterCreditJoules = 3e6, PumpStarts = 0.5 };

        Assert.Equal(0, Step(Settings, memory, 2000, false, 0, 0, Hour).Duty);
        Assert.True(Step(Settings, memory, 2000, true, 0, 0, Hour).Duty > 0);
        Assert.True(Step(Settings, memory with { PumpStarts = 25, WaterCreditJoules = -5e6 }, 2000, true, 0, 0, Hour).Duty > 0);
    }

    [Theory]
    [InlineData(299_990, true)]
    [InlineData(300_000, false)]
    public void Step_GrantGone_RunsItsLeastTimeOut(long ran, bool runs) => Assert.Equal(
        runs, Step(Settings, Running with { PumpSinceMilliseconds = Hour }, 0, false, 1000, 2, Hour + ran).Duty > 0);

    // 300 s, and 12 % of them for each of six starts beyond the first: 516 s.
    [Theory]
    [InlineData(PumpDrive.Duty, 515_990, true)]
    [InlineData(PumpDrive.Duty, 516_000, false)]
    [InlineData(PumpDrive.OnOff, 516_000, false)]
    public void Step_GrantGoneAfterManyStarts_RunsOnLonger(PumpDrive drive, long ran, bool runs)
    {
        ControlSettings settings = Settings with { Drive = drive };
        RegulatorMemory memory = Running with { PumpStarts = 7, PumpSinceMilliseconds = Hour };

        Assert.Equal(runs, Step(settings, memory, 0, false, 1000, 2, Hour + ran).Duty > 0);
    }

    [Fact]
    public void Remember_StartWithoutEnd_LetsComfortWaitADayAndNotWeeks()
    {
        RegulatorMemory memory = new();
        for (int start = 0; start < 200; start++)
        {
            memory = OutputRule.Remember(memory, memory with { PumpDuty = 0, BlowerDuty = 0 }, new Outputs(1, 1, 1, false), Mode.Drawing, Hour);
        }

        Assert.InRange(memory.PumpStarts * Allotment.SpanSeconds, 43_200, 86_400);
        Assert.InRange(memory.BlowerStarts * Allotment.SpanSeconds, 43_200, 86_400);
    }

    [Fact]
    public void Step_SpanGivenAhead_StopsThoughSomethingIsGranted()
    {
        RegulatorMemory memory = Running with { WaterCreditJoules = -1.5e6, PumpStarts = 0.2 };

        Assert.Equal(0, Step(Settings, memory, 300, true, 1600, 1.07, Hour).Duty);
    }

    [Theory]
    [InlineData(3000, 1)]
    [InlineData(1800, -1)]
    public void Step_DrawOffTheGrant_MovesTheDutyTowardIt(double grant, int sign) => Assert.Equal(
        sign, Math.Sign(Step(Settings, Running, grant, false, 2250, 1.5, Hour).Duty - Running.PumpDuty));

    [Fact]
    public void Step_MeterCountsMoreThanTheCurve_IsLearnedAndTheDutyComesDown()
    {
        RegulatorMemory memory = Running;
        for (int tick = 0; tick < 60; tick++)
        {
            // The loop lets half as much again through, and a litre carries 1500 W.
            double flow = 1.5 * 3.05 * memory.PumpDuty;
            (double duty, double opening, RegulatorMemory next) = Step(Settings, memory, 3000, false, 1500 * flow, flow, Hour);
            memory = next with { PumpDuty = duty, ValveOpening = opening };
        }

        Assert.Equal(0.5, memory.FlowExcess, 0.02);
        Assert.Equal(2, 1.5 * 3.05 * memory.PumpDuty, 0.05);
    }

    [Fact]
    public void Step_UnreachableGrant_OwesNothingLater()
    {
        RegulatorMemory memory = Running with { PumpDuty = 1 };
        for (int tick = 0; tick < 100; tick++)
        {
            memory = Step(Settings, memory, 9000, false, 4500, 3.05, Hour).Memory;
        }

        Assert.Equal(0, memory.WaterCreditJoules);
    }

    [Fact]
    public void Step_NothingGrantedForLong_DropsTheCreditAndKeepsTheDebt()
    {
        Assert.Equal(0, Credit(2e6));
        Assert.Equal(-1e6, Credit(-1e6));

        static double Credit(double before) => Step(
            Settings, new RegulatorMemory { WaterCreditJoules = before }, 0, false, 0, 0, Hour).Memory.WaterCreditJoules;
    }

    [Fact]
    public void Step_LoopThatLiftsItsWater_StartsAndStaysAboveTheDutyThatMovesIt()
    {
        ControlSettings lifting = Settings with { MovingDuty = 0.62, Loop = Settings.Loop with { StillDuty = 0.6 } };
        double start = Step(lifting, new RegulatorMemory { WaterCreditJoules = 3e6 }, 500, true, 0, 0, Hour).Duty;
        double slowed = Step(lifting, Running with { PumpDuty = 0.63 }, 1600, true, 3000, 2, Hour).Duty;

        Assert.InRange(start, 0.62, 1);
        Assert.InRange(slowed, 0.62, 0.63);
    }

    [Fact]
    public void Step_Relay_KnowsFullAndNoneOnly()
    {
        ControlSettings relay = Settings with { Drive = PumpDrive.OnOff };

        Assert.Equal((1.0, 1.0), Outputs(new RegulatorMemory { WaterYieldWatts = 1500 }));
        Assert.Equal((1.0, 1.0), Outputs(Running with { PumpDuty = 1 }));

        (double, double) Outputs(RegulatorMemory memory)
        {
            (double duty, double opening, _) = Step(relay, memory, 1000, true, 0, 0, Hour);
            return (duty, opening);
        }
    }

    [Fact]
    public void Step_Throttled_SetsTheOpeningAndLeavesItInRest()
    {
        ControlSettings throttled = Settings with { Drive = PumpDrive.Valve, ThrottledDuty = 0.8 };
        RegulatorMemory memory = Running with { PumpDuty = 0.8, ValveOpening = 0.3 };
        (double duty, double opening, _) = Step(throttled, memory, 2550, false, 3600, 2.4, Hour);

        Assert.Equal(0.8, duty);
        Assert.InRange(opening, LoopCurve.LeastValveOpening, 0.29);
        Assert.Equal((0, 0.3), (Step(throttled, memory, 0, false, 0, 0, Hour).Duty, Step(throttled, memory, 0, false, 0, 0, Hour).Opening));
    }

    [Fact]
    public void Step_AnyGrantsAndDraws_CreditStaysBoundedAndDutyAndValveSlew() =>
        Gen.Select(Gen.Double[0, 20_000], Gen.Double[-5000, 20_000], Gen.Double[0, 8], Gen.Double[1, 60], Gen.Int[0, 2]).Array[1, 200].Sample(steps =>
        {
            ControlSettings settings = Settings with { Drive = (PumpDrive)steps[0].Item5 };
            RegulatorMemory memory = default;
            long now = Hour;
            foreach ((double grant, double draw, double flow, double seconds, _) in steps)
            {
                now += (long)(seconds * 1000);
                RegulatorMemory before = memory;
                (double duty, double opening, memory) = PumpRegulator.Step(settings, memory, grant, true, draw, flow, true, seconds, now);
                Assert.InRange(memory.WaterCreditJoules, -9e6, 3e6);
                Assert.InRange(opening, 0, 1);
                Assert.True(duty is 0 or (>= 0.35 and <= 1));
                if (before.PumpDuty > 0 && duty > 0 && settings.Drive == PumpDrive.Duty)
                {
                    Assert.True(Math.Abs(duty - before.PumpDuty) <= (settings.DutySlewPerSecond * seconds) + 1e-12);
                }

                if (settings.Drive == PumpDrive.Valve)
                {
                    Assert.True(Math.Abs(opening - before.ValveOpening) <= (seconds / settings.Loop.ValveTravelSeconds) + 1e-12);
                }

                memory = memory with { PumpDuty = duty, ValveOpening = opening };
            }
        });

    private static (double Duty, double Opening, RegulatorMemory Memory) Step(
        ControlSettings settings, RegulatorMemory memory, double grant, bool urgent, double draw, double flow, long now) =>
        PumpRegulator.Step(settings, memory, grant, urgent, draw, flow, true, 10, now);
}
