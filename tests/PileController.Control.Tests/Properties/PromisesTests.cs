using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Regulation;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Properties;

/// <summary>What the controller promises whatever the rig says, people ask and the clocks do.</summary>
public sealed class PromisesTests
{
    private const int Scenarios = 10_000;

    // What would break each promise, done to what came of a tick. A promise that stands this would stand anything.
    private static readonly Dictionary<string, Func<Tick, Tick>> Spoils = new()
    {
        ["a pump that moves no water is stopped within the interlock's time"] = t => Pumps(t) with
        {
            Before = t.Before with { Outputs = Pumping },
        },
        ["water is drawn only after priming has proven the flow"] = t => With(Pumps(t), d => d with { Mode = Mode.Drawing }),
        ["no pump runs while leak, level, noFlow or pumpSilent act"] = Pumps,
        ["nothing is drawn at the floor but against frost in the lines or by hand"] = t => With(t, d => d with { GrantWatts = 1 }),
        ["the grant is within want and means"] = t => With(t, d => d with { GrantWatts = d.WantWatts + 1 }),
        ["a heap that has not lit is not drawn on"] = Pumps,
        ["outputs stay within their range"] = t => With(t, d => d with { Outputs = d.Outputs with { BlowerDuty = 1.01 } }),
        ["a running draw changes no faster than the slew"] = t => With(t, d => d with
        {
            Outputs = d.Outputs with { PumpDuty = d.Outputs.PumpDuty > 0.5 ? 0.01 : 1 },
        }),
        ["a relay is on or off, and a pump behind a valve runs at its one duty"] = Pumps,
        ["a hold ends when it was said to, within a day, and with a restart"] = t => t with
        {
            After = t.After with { Hands = [.. t.After.Hands.Select(h => h with { UntilMonotonicMilliseconds = h.UntilMonotonicMilliseconds + 86_400_001 })] },
        },
        ["all is safe while tripped or at work on the rig, whatever is asked"] = Pumps,
        ["a trip ends only by the command that clears it"] = t => t with { After = t.After with { Interlocks = Memory.Fresh.Interlocks } },
        ["every figure is a number"] = t => t with { After = t.After with { Totals = t.After.Totals with { Litres = double.NaN } } },
        ["a run taken up from a written memory goes on to the same bits"] = t => t with
        {
            Decision = t.Decision with { GrantWatts = Math.BitIncrement(t.Decision.GrantWatts) },
        },
    };

    private static readonly Outputs Pumping = new(0.5, 1, 0, false);

    public static TheoryData<string> Names => [.. Promise.All.Select(p => p.Name)];

    /// <summary>All promises are held against the same scenarios, always the same ones; the first that breaks one is made small.</summary>
    [Fact]
    public void Step_AnyScenario_KeepsEveryPromise()
    {
        ParallelLoopResult tried = Parallel.For(0, Scenarios, (number, loop) =>
        {
            if (Promise.Hold(Promise.All, Scenario.Of(number)) is not null)
            {
                loop.Break();
            }
        });
        if (tried.LowestBreakIteration is { } first)
        {
            Scenario scenario = Scenario.Of((int)first);
            (Scenario least, BrokenPromise broken) = Promise.Hold(Promise.All, scenario)!.Shrunk(scenario);
            Assert.Fail($"Broken by scenario {first}: {broken.Promise.Name}. Tick {broken.Index}: {broken.Said}\n{least}");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Hold_APromiseBrokenOnPurpose_SaysSo(string name)
    {
        Promise[] promise = [Promise.All.Single(p => p.Name == name)];

        Assert.Contains(
            Enumerable.Range(0, 400), number => Promise.Hold(promise, Scenario.Of(number), Spoils[name])?.Promise == promise[0]);
    }

    /// <summary>A promise is worth what it was tried on.</summary>
    [Fact]
    public void Scenarios_Together_ReachEveryModeCurbVerdictAndInterlock()
    {
        HashSet<(Mode Mode, bool Pumping)> modes = [];
        HashSet<(Mode Mode, PumpDrive Drive)> drives = [];
        HashSet<Curb> curbs = [];
        HashSet<(int, bool)> acted = [];
        HashSet<Verdict> verdicts = [];
        HashSet<Course> courses = [];
        HashSet<string> seen = [];
        for (int number = 0; number < 600; number++)
        {
            bool restarted = false;
            Scenario.Of(number).Run(tick =>
            {
                Decision decision = tick.Decision;
                modes.Add((decision.Mode, decision.Outputs.PumpDuty > 0));
                drives.Add((decision.Outputs.PumpDuty > 0 ? decision.Mode : Mode.Standby, tick.Settings.Drive));
                curbs.Add(decision.Curb);
                verdicts.UnionWith(decision.Verdicts);
                for (int i = 0; i < decision.Verdicts.Length; i++)
                {
                    acted.Add((i, decision.Verdicts[i] is Verdict.Acting or Verdict.Latched));
                }

                courses.Add(tick.After.Course);
                seen.UnionWith(Seen(tick));
                restarted |= tick.Move.Restart;
                if (restarted && decision is { Mode: Mode.Drawing, Outputs.PumpDuty: > 0 })
                {
                    seen.Add("restart, then water");
                }
            });
        }

        Assert.Equal(Enum.GetValues<Mode>(), modes.Select(m => m.Mode).Distinct().Order());
        Assert.Contains((Mode.Drawing, true), modes);
        Assert.Contains((Mode.ByHand, true), modes);
        Assert.All(Enum.GetValues<PumpDrive>(), drive =>
            Assert.All([Mode.Priming, Mode.Drawing, Mode.FrostGuard, Mode.ByHand], mode => Assert.Contains((mode, drive), drives)));
        Assert.Equal(Enum.GetValues<Curb>(), curbs.Order());
        Assert.Equal(Enum.GetValues<Verdict>(), verdicts.Order());
        Assert.Equal(2 * InterlockTable.All.Count, acted.Count);
        Assert.True(courses.Count >= 3, $"{courses.Count} courses");
        Assert.Equal(
            ["air drawn", "at its floor, warm", "forecast", "horizon with a forecast", "restart, then water", "slewing", "solved", "solved again"], seen.Order());
    }

    [Fact]
    public void Step_SameArguments_SameBits()
    {
        for (int number = 0; number < 150; number++)
        {
            Scenario.Of(number).Run(tick =>
            {
                (Decision again, Memory afterAgain) = Controller.Step(
                    tick.Settings, tick.Before, tick.Move.Readings, tick.Move.Commands, tick.Decision.At);
                Assert.Equal(Bits.Of(tick.Decision), Bits.Of(again));
                Assert.Equal(Bits.Of(tick.After), Bits.Of(afterAgain));
            });
        }
    }

    private static IEnumerable<string> Seen(Tick tick)
    {
        Memory after = tick.After;
        if (after.Forecast is not null)
        {
            yield return "forecast";
        }

        if (after.LookedAtMonotonicMilliseconds >= 0 && after.LookedAtMonotonicMilliseconds != tick.Before.LookedAtMonotonicMilliseconds)
        {
            yield return tick.Before.LookedAtMonotonicMilliseconds < 0 ? "solved" : "solved again";
            if (after.Forecast is { } forecast && forecast.EndUtcMilliseconds > tick.Decision.At.UtcMilliseconds)
            {
                yield return "horizon with a forecast";
            }
        }

        bool drawing = tick.Decision.Mode == Mode.Drawing && tick.Decision.ModeBefore == Mode.Drawing;
        if (drawing && tick.Told.BlowerDuty > 0)
        {
            yield return "air drawn";
        }

        if (drawing && tick.Before.Outputs.PumpDuty > 0 && tick.Told.PumpDuty > 0 && tick.Told.PumpDuty != tick.Before.Outputs.PumpDuty)
        {
            yield return "slewing";
        }

        if (after.Estimator.Lit && after.Estimator.LeastZoneC <= tick.Settings.HeapFloorC && after.Estimator.ActiveZoneC > tick.Settings.HeapFloorC)
        {
            yield return "at its floor, warm";
        }
    }

    private static Tick Pumps(Tick tick) => With(tick, d => d with { Outputs = Pumping });

    private static Tick With(Tick tick, Func<Decision, Decision> change) => tick with { Decision = change(tick.Decision) };
}
