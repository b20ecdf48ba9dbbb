using CsCheck;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Properties;

/// <summary>What the controller promises whatever the rig says, people ask and the clocks do.</summary>
public sealed class PromisesTests
{
    private const int Scenarios = 1500;
    private const double Grain = 1e-9;

    /// <summary>A promise is worth what it was tried on.</summary>
    [Fact]
    public void Scenarios_Together_ReachEveryModeCurbVerdictAndInterlock()
    {
        HashSet<(Mode, bool Pumping)> modes = [];
        HashSet<Curb> curbs = [];
        HashSet<(int, bool)> acted = [];
        HashSet<Verdict> verdicts = [];
        foreach (Scenario scenario in Scenario.Any.Array[600].Generate(new PCG(1, 1), null, out _))
        {
            scenario.Run((_, _, decision, _) =>
            {
                modes.Add((decision.Mode, decision.Outputs.PumpDuty > 0));
                curbs.Add(decision.Curb);
                verdicts.UnionWith(decision.Verdicts);
                for (int i = 0; i < decision.Verdicts.Length; i++)
                {
                    acted.Add((i, decision.Verdicts[i] is Verdict.Acting or Verdict.Latched));
                }
            });
        }

        Assert.Equal(Enum.GetValues<Mode>(), modes.Select(m => m.Item1).Distinct().Order());
        Assert.Contains((Mode.Drawing, true), modes);
        Assert.Contains((Mode.ByHand, true), modes);
        Assert.Equal(Enum.GetValues<Curb>(), curbs.Order());
        Assert.Equal(Enum.GetValues<Verdict>(), verdicts.Order());
        Assert.Equal(2 * InterlockTable.All.Count, acted.Count);
    }

    [Fact]
    public void Step_Anything_OutputsStayWithinTheirRangeAndEveryFigureIsANumber() => Each((_, _, decision, after, _) =>
    {
        Outputs outputs = decision.Outputs;
        Assert.InRange(outputs.PumpDuty, 0, 1);
        Assert.InRange(outputs.ValveOpening, 0, 1);
        Assert.InRange(outputs.BlowerDuty, 0, 1);
        Assert.True(decision.GrantWatts >= 0 && decision.WantWatts >= 0 && decision.MeansWatts >= 0);

        // Writing throws at a NaN or an infinity anywhere.
        Assert.NotEmpty(Bits.Of(decision));
        Assert.NotEmpty(Bits.Of(after));
        Assert.Equal(InterlockTable.All.Count, decision.Verdicts.Length);
    });

    [Fact]
    public void Step_Anything_GrantIsWithinWantAndUnderMeansWithinMeans() => Each((_, _, decision, _, settings) =>
    {
        Assert.True(decision.GrantWatts <= decision.WantWatts + Grain);
        Assert.True(settings.Policy != DrawPolicy.Means || decision.GrantWatts <= decision.MeansWatts + Grain);
        Assert.Equal(decision.GrantWatts, decision.WaterGrantWatts + decision.AirGrantWatts, Grain);
    });

    [Fact]
    public void Step_NotLit_DrawsNothingButAgainstFrostOrByHand() => Each((_, _, decision, _, _) =>
    {
        if (!decision.Estimate.Lit && decision.Mode != Mode.ByHand && !Acts(decision, "lineFrost"))
        {
            Assert.Equal(0, decision.Outputs.PumpDuty);
            Assert.Equal(0, decision.Outputs.BlowerDuty);
        }
    });

    [Fact]
    public void Step_TrippedOrServicing_AllIsSafeWhateverIsHeld() => Each((_, _, decision, after, _) =>
    {
        bool latched = after.Interlocks.Any(i => i.Latched);
        if (latched)
        {
            Assert.Equal(Mode.Tripped, decision.Mode);
        }

        if (latched || after.Servicing || decision.Mode is Mode.Tripped or Mode.Servicing)
        {
            Assert.Equal(Outputs.Safe, decision.Outputs);
        }
    });

    [Fact]
    public void Step_ALatchedTrip_EndsOnlyByACommandThatClearsIt() => Each((before, move, decision, after, _) =>
    {
        for (int i = 0; i < after.Interlocks.Length; i++)
        {
            if (before.Interlocks[i].Latched && !after.Interlocks[i].Latched)
            {
                Assert.Contains(move.Commands, c => c is ClearTrip clear && clear.Interlock == InterlockTable.All[i].Id);
                Assert.True(decision.Kinds.HasFlag(DecisionKinds.Clear));
            }
        }
    });

    [Fact]
    public void Step_AnyHold_EndsByItselfWithinADay() => Each((_, _, decision, after, _) =>
    {
        foreach (HandHold hand in after.Hands)
        {
            Assert.InRange(hand.UntilMonotonicMilliseconds, decision.At.MonotonicMilliseconds + 1, decision.At.MonotonicMilliseconds + 86_400_000);
        }

        Assert.True(after.Hands.Length <= 4);
        Memory later = Controller.Step(
            new ControlSettings(), after, Sound.Readings, [], new Instant(0, decision.At.MonotonicMilliseconds + 86_400_001, 0)).Memory;
        Assert.Empty(later.Hands);
        Assert.NotEqual(Mode.ByHand, later.Mode);
    });

    /// <summary>
    /// Under means, a duty that was already above nothing in Drawing rises no faster than the slew. Left out: the step from
    /// standing to the start duty, the lift to the frost guard's duty, and what a person does.
    /// </summary>
    [Fact]
    public void Step_DrawingUnderMeans_DutiesRiseNoFasterThanTheSlew() => Each((before, move, decision, _, settings) =>
    {
        if (settings.Policy != DrawPolicy.Means || decision.Mode != Mode.Drawing || decision.ModeBefore != Mode.Drawing)
        {
            return;
        }

        double most = (settings.DutySlewPerSecond * Math.Min(move.Seconds, 120)) + Grain;
        double pumpFrom = Math.Max(before.Outputs.PumpDuty, Acts(decision, "lineFrost") ? 0.4 : 0);
        Assert.True(before.Outputs.PumpDuty == 0 || decision.Outputs.PumpDuty <= pumpFrom + most);
        Assert.True(decision.Outputs.PumpDuty <= (before.Outputs.PumpDuty == 0 ? 0.5 : 1));
        Assert.True(
            before.Outputs.BlowerDuty == 0 ? decision.Outputs.BlowerDuty is 0 or 0.3 : decision.Outputs.BlowerDuty <= before.Outputs.BlowerDuty + most);
    });

    [Fact]
    public void Step_PumpWithoutProofOfFlow_StopsWithinTheTimeAndTwoTicks() => Scenario.Any.Sample(
        scenario =>
        {
            long unproven = -1;
            double longest = 0;
            scenario.Run((before, move, decision, after) =>
            {
                bool ran = before.Outputs.PumpDuty > 0;
                bool proof = decision.Readings.TryGet(Channel.Flow, out double flow)
                    ? flow >= scenario.Settings.Limits.NoFlowLitresPerMinute
                    : decision.Readings.TryGet(Channel.PumpPower, out double watts) && watts >= 0.5;
                unproven = !ran || proof ? -1 : unproven >= 0 ? unproven : before.LastMonotonicMilliseconds;
                longest = unproven >= 0 ? Math.Max(longest, move.Seconds) : 0;
                if (unproven >= 0 && decision.Outputs.PumpDuty > 0)
                {
                    double since = (decision.At.MonotonicMilliseconds - unproven) * 0.001;
                    Assert.True(since <= scenario.Settings.Limits.NoFlowSeconds + (2 * longest), $"{since} s, ticks of up to {longest} s");
                }
            });
        },
        iter: Scenarios);

    [Fact]
    public void Step_AfterATripOrARestart_DrawsWaterOnlyAfterPriming() => Each((before, _, decision, _, _) =>
    {
        // Water drawn in Drawing was drawn the tick before too, or comes straight from a priming that proved flow.
        if (decision.Mode == Mode.Drawing && decision.Outputs.PumpDuty > 0 && !Acts(decision, "lineFrost"))
        {
            Assert.True(before.Mode is Mode.Priming or Mode.Drawing);
            Assert.True(before.Outputs.PumpDuty > 0);
        }
    });

    [Fact]
    public void Step_SameArguments_SameBits() => Scenario.Any.Sample(
        scenario => scenario.Run((before, move, decision, after) =>
        {
            (Decision again, Memory afterAgain) = Controller.Step(scenario.Settings, before, move.Readings, move.Commands, decision.At);
            Assert.Equal(Bits.Of(decision), Bits.Of(again));
            Assert.Equal(Bits.Of(after), Bits.Of(afterAgain));
        }),
        iter: Scenarios / 10);

    private static bool Acts(Decision decision, string id) => decision.Verdicts[InterlockTable.IndexOf(id)] == Verdict.Acting;

    private static void Each(Action<Memory, Move, Decision, Memory, ControlSettings> check) => Scenario.Any.Sample(
        scenario => scenario.Run((before, move, decision, after) => check(before, move, decision, after, scenario.Settings)),
        iter: Scenarios);
}
