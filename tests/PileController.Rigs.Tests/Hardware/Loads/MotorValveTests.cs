using CsCheck;
using PileController.Control.Decisions;

namespace PileController.Rigs.Tests.Hardware.Loads;

public class MotorValveTests
{
    [Theory]
    [InlineData(0.0, 0.3)]
    [InlineData(0.7, 0.3)]
    [InlineData(1.0, 0.8)]
    [InlineData(0.4, 1)]
    [InlineData(0.4, 0)]
    public void Drive_UnknownPlace_FindsAStopFirstAndThenItsTarget(double stands, double wanted)
    {
        using ValveTrial trial = new(stands);
        Assert.Null(trial.Valve.Believed);
        trial.Want(wanted);
        trial.Run(3 * ValveTrial.Travel);

        Assert.Equal(wanted, trial.Position, 0.006);
        Assert.Equal(wanted, trial.Valve.Believed!.Value, 0.006);
        Assert.Equal(0, trial.Direction);
        Assert.Empty(trial.News);
    }

    [Fact]
    public void Drive_WithEndSwitches_StopsAtTheSwitchAndNotAfterATime()
    {
        using ValveTrial trial = new(0.9, ends: true);
        trial.Want(1);
        trial.Run(2);
        Assert.Equal(1, trial.Direction);
        trial.Run(5);

        Assert.Equal((1, 1.0, 0), (trial.Position, trial.Valve.Believed, trial.Direction));
    }

    [Fact]
    public void Drive_ToAPartOfTheWay_IsOnForThatPartOfTheTravel()
    {
        using ValveTrial trial = Known(0);
        trial.Want(0.4);
        double began = trial.Seconds;
        trial.Run(60);

        Assert.Equal(0.4 * ValveTrial.Travel, trial.Stops[^1].At - began, 0.05);
        Assert.Equal(0.4, trial.Position, 0.002);
    }

    [Fact]
    public void Drive_ASmallWay_IsNotWorthAStroke()
    {
        using ValveTrial trial = Known(0.4);
        int starts = trial.Starts.Length;
        trial.Want(0.404);
        trial.Run(30);

        Assert.Equal(starts, trial.Starts.Length);
    }

    [Fact]
    public void Drive_TheOtherWay_RestsForTheDeadTimeFirst()
    {
        using ValveTrial trial = Known(0, deadSeconds: 2.5);
        trial.Want(0.8);
        trial.Run(5);
        trial.Want(0.1);
        trial.Run(30);

        Assert.Equal((1, -1), (trial.Starts[^2].Direction, trial.Starts[^1].Direction));
        Assert.InRange(trial.Starts[^1].At - trial.Stops[^2].At, 2.5, 2.6);
        Assert.Equal(0.1, trial.Position, 0.006);
    }

    [Fact]
    public void Drive_AnySequence_NeverHasBothLinesOnAndKeepsTheDeadTime() =>
        Gen.Select(
            Gen.Select(Gen.Int[0, 5], Gen.Double[0, 1], Gen.Double[0.01, 60]).List[1, 40], Gen.Bool, Gen.Double[0, 1], Gen.Double[0.1, 5],
            Gen.Enum<ValveSafe>()).Sample(
            (acts, ends, stands, dead, safe) =>
            {
                using ValveTrial trial = new(stands, ends, safe, opensFaster: 0.05, deadSeconds: dead);
                foreach ((int act, double share, double seconds) in acts)
                {
                    Act(trial, act, share);
                    trial.Run(seconds);
                }

                Assert.False(trial.Overlaps);
                for (int i = 2; i < trial.Turns.Count; i++)
                {
                    if (trial.Turns[i].Direction == -trial.Turns[i - 2].Direction && trial.Turns[i].Direction != 0)
                    {
                        Assert.True(trial.Turns[i].At - trial.Turns[i - 1].At >= dead - 1e-6);
                    }
                }

                for (int i = 1; i < trial.Turns.Count; i++)
                {
                    Assert.True(trial.Turns[i].Direction == 0 || trial.Turns[i - 1].Direction == 0);
                }

                trial.Valve.SwitchOff();
                trial.BrokenLines.Clear();
                trial.Valve.SwitchOff();
                Assert.Equal(0, trial.Direction);
            },
            iter: 100);

    [Fact]
    public void Drive_WithoutSwitches_IsSetRightOnceADay()
    {
        using ValveTrial trial = new(0, opensFaster: 0.03);
        for (int i = 0; i < 40; i++)
        {
            trial.Want(0.3 + (0.2 * (i % 2)));
            trial.Run(60);
        }

        double drift = Math.Abs(trial.Position - trial.Valve.Believed!.Value);
        trial.BeatSeconds = 60;
        trial.Run(86_400 - trial.Seconds);
        trial.Want(0.3);
        trial.Run(200);

        Assert.InRange(drift, 0.05, 1);
        Assert.Equal(0.3, trial.Position, 0.02);
    }

    [Fact]
    public void Drive_AnEndSwitchThatStaysSilent_StopsToldOnceAndGoesOnByTime()
    {
        using ValveTrial trial = new(0, ends: true);
        trial.DeadEnds.Add(ValveTrial.OpenEnd);
        trial.Want(1);
        trial.Run(200);

        Assert.Equal(0, trial.Direction);
        Assert.Contains("open end switch did not report", Assert.Single(trial.News), StringComparison.Ordinal);
        Assert.InRange(trial.Stops[^1].At, 0, (1.2 * ValveTrial.Travel) + 2);
        trial.Want(0.5);
        trial.Run(100);
        Assert.Equal(0.5, trial.Position, 0.01);
        Assert.Single(trial.News);
        Assert.Empty(trial.Faults);
    }

    [Fact]
    public void Drive_BothEndSwitchesReport_IsToldOnceAndGoesOnByTime()
    {
        using ValveTrial trial = Known(0, ends: true);
        trial.DeadEnds.UnionWith([ValveTrial.OpenEnd, ValveTrial.ShutEnd]);
        trial.Force(ValveTrial.OpenEnd, true);
        trial.Force(ValveTrial.ShutEnd, true);
        trial.Want(0.5);
        trial.Run(100);

        Assert.Contains("Both end switches", Assert.Single(trial.News), StringComparison.Ordinal);
        Assert.Equal(0.5, trial.Position, 0.01);
    }

    [Fact]
    public void Drive_AValveThatDoesNotLeaveItsEnd_IsTold()
    {
        using ValveTrial trial = Known(0, ends: true);
        trial.IsJammed = true;
        trial.Want(0.6);
        trial.Run(100);

        Assert.Contains("does not leave its shut end", Assert.Single(trial.News), StringComparison.Ordinal);
        Assert.Equal(0, trial.Direction);
    }

    [Theory]
    [InlineData(ValveSafe.Stays, 0.5)]
    [InlineData(ValveSafe.Shut, 0)]
    [InlineData(ValveSafe.Open, 1)]
    public void Want_AllSafe_DoesWhatIsSafe(ValveSafe safe, double ends)
    {
        using ValveTrial trial = Known(0.5, safe: safe);
        trial.Valve.Want(Outputs.Safe, valveIsHeld: false);
        trial.Run(100);

        Assert.Equal(ends, trial.Position, 0.006);
        Assert.Equal(0, trial.Direction);
    }

    [Theory]
    [InlineData(0.4, false)]
    [InlineData(0, true)]
    public void Want_WaterSafeWhileAirOrBackupRuns_DoesWhatIsSafe(double blower, bool backup)
    {
        using ValveTrial trial = Known(0.5, safe: ValveSafe.Open);
        trial.Valve.Want(new Outputs(0, 0, blower, backup), valveIsHeld: false);
        trial.Run(100);

        Assert.Equal(1, trial.Position, 0.006);
    }

    [Theory]
    [InlineData(ValveSafe.Stays)]
    [InlineData(ValveSafe.Open)]
    public void Want_HeldShutWithThePumpOff_RunsShutAndOnceLetGoWhereItIsSafe(ValveSafe safe)
    {
        using ValveTrial trial = Known(0.5, safe: safe);
        trial.Valve.Want(Outputs.Safe, valveIsHeld: true);
        trial.Run(100);
        Assert.Equal(0, trial.Position, 0.006);

        trial.Valve.Want(Outputs.Safe, valveIsHeld: false);
        trial.Run(100);
        Assert.Equal(safe == ValveSafe.Open ? 1 : 0, trial.Position, 0.006);
    }

    [Fact]
    public void Want_ShutWhileThePumpRuns_RunsShut()
    {
        using ValveTrial trial = Known(0.5, safe: ValveSafe.Open);
        trial.Want(0);
        trial.Run(100);

        Assert.Equal(0, trial.Position, 0.006);
    }

    [Fact]
    public void Want_AllSafeOnTheWay_StopsAtOnce()
    {
        using ValveTrial trial = Known(0);
        trial.Want(1);
        trial.Run(10);
        trial.Valve.Want(Outputs.Safe, valveIsHeld: false);
        trial.Run(10);

        Assert.Equal(0, trial.Direction);
        Assert.Equal(0.25, trial.Position, 0.01);
    }

    [Fact]
    public void Drive_ALineThatFails_IsAFaultAndNeitherLineIsOn()
    {
        using ValveTrial trial = Known(0);
        trial.BrokenLines.Add(ValveTrial.Open);
        trial.Want(0.5);
        trial.Run(3);

        Assert.NotEmpty(trial.Faults);
        Assert.Contains("The valve's line 5 cannot be switched", trial.Faults[0].Message, StringComparison.Ordinal);
        Assert.Equal(0, trial.Direction);
        trial.BrokenLines.Clear();
        trial.Run(150);
        Assert.Equal(0.5, trial.Position, 0.01);
    }

    private static void Act(ValveTrial trial, int act, double share)
    {
        switch (act)
        {
            case 0:
                trial.Valve.Want(Outputs.Safe, valveIsHeld: false);
                break;
            case 1:
                trial.Want(Math.Round(share));
                break;
            case 2:
                trial.BrokenLines.Add(share < 0.5 ? ValveTrial.Open : ValveTrial.Shut);
                break;
            case 3:
                trial.BrokenLines.Clear();
                trial.IsJammed = share < 0.3;
                break;
            default:
                trial.Want(share);
                break;
        }
    }

    private static ValveTrial Known(double place, bool ends = false, ValveSafe safe = ValveSafe.Stays, double deadSeconds = 1)
    {
        ValveTrial trial = new(place, ends, safe, deadSeconds: deadSeconds);
        trial.Want(place);
        trial.Run(150);
        Assert.Equal(place, trial.Valve.Believed!.Value, 0.006);
        return trial;
    }
}
