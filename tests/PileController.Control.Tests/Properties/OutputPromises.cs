using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Regulation;

namespace PileController.Control.Tests.Properties;

/// <summary>What the actuators are told is what they can do.</summary>
internal static class OutputPromises
{
    private const double Grain = 1e-9;

    // The controller takes a longer tick for one of this length, s.
    private const double LongestTick = 120;

    public static IReadOnlyList<Promise> All { get; } =
    [
        Promise.OfEach("outputs stay within their range", StaysInRange),
        Promise.OfEach("a running draw changes no faster than the slew", Slews),
        Promise.OfEach("a relay is on or off, and a pump behind a valve runs at its one duty", SuitsTheDrive),
    ];

    private static void StaysInRange(Tick tick)
    {
        Assert.InRange(tick.Told.PumpDuty, 0, 1);
        Assert.InRange(tick.Told.ValveOpening, 0, 1);
        Assert.InRange(tick.Told.BlowerDuty, 0, 1);
    }

    // What drew the tick before and draws on. Left out: starts and stops, the lift to the frost guard's duty, a draw that an
    // interlock stops in the tick in which the guard runs on, what a person does.
    private static void Slews(Tick tick)
    {
        if (!Draws(tick.Decision.Mode) || !Draws(tick.Decision.ModeBefore))
        {
            return;
        }

        double most = (tick.Settings.DutySlewPerSecond * Math.Min(tick.Move.Seconds, LongestTick)) + Grain;
        double lift = tick.Acts("lineFrost") ? Math.Max(0.4, tick.Settings.MovingDuty) : 0;
        if (lift == 0 || !InterlockTable.All.Any(row => HoldsWater(row) && tick.Acts(row.Id)))
        {
            Follows(tick.Before.Outputs.PumpDuty, tick.Told.PumpDuty, most, lift);
        }

        Follows(tick.Before.Outputs.BlowerDuty, tick.Told.BlowerDuty, most, 0);
    }

    private static bool HoldsWater(Interlock row) => row.Action is InterlockAction.HoldWater or InterlockAction.HoldAll;

    private static bool Draws(Mode mode) => mode is Mode.Priming or Mode.Drawing;

    private static void Follows(double before, double after, double most, double lift)
    {
        if (before > 0 && after > 0)
        {
            Assert.InRange(after, before - most, Math.Max(before, lift) + most);
        }
    }

    private static void SuitsTheDrive(Tick tick)
    {
        bool held = HandRule.Held(tick.After.Hands, Actuator.Pump) is not null;
        double duty = tick.Told.PumpDuty;
        Assert.True(
            tick.Settings.Drive switch
            {
                PumpDrive.OnOff => duty is 0 or 1,
                PumpDrive.Valve when tick.Settings.Policy == DrawPolicy.Means && !held =>
                    duty == 0 || duty == Math.Max(tick.Settings.ThrottledDuty, tick.Settings.MovingDuty),
                _ => true,
            },
            $"duty {duty} with {tick.Settings.Drive}");
    }
}
