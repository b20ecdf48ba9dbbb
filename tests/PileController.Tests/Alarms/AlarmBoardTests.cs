using PileController.Alarms;
using PileController.Control.Decisions;
using static PileController.Tests.Alarms.Bench;

namespace PileController.Tests.Alarms;

public class AlarmBoardTests
{
    private bool? _holds;
    private bool? _other;

    [Fact]
    public void Step_SignForLessThanItsDelay_RaisesNothing()
    {
        Bench bench = new(Row("a", _ => _holds) with { DelaySeconds = 60 });
        _holds = true;
        bench.Live(6);
        _holds = false;
        bench.Live(100);
        Assert.Empty(bench.Events);
        Assert.Equal(AlarmPhase.Off, bench["a"].Phase);
    }

    [Fact]
    public void Step_SignForItsDelay_RaisesAtThatTickOnceAndEndsAfterItsClearing()
    {
        Bench bench = new(Row("a", _ => _holds) with { DelaySeconds = 60, ClearSeconds = 30 });
        _holds = true;
        bench.Live(7);
        Assert.Equal(AlarmEventKind.Raised, Assert.Single(bench.Events).Kind);
        bench.Live(50);
        _holds = false;
        bench.Live(2);
        Assert.Equal(AlarmPhase.Standing, bench["a"].Phase);
        bench.Live(1);
        Assert.Equal([AlarmEventKind.Raised, AlarmEventKind.Returned], bench.Events.Select(one => one.Kind));
        Assert.True(bench["a"].Listed, "ended unseen, so still listed");
    }

    [Theory]
    [InlineData("Robin", "Robin")]
    [InlineData(null, "")]
    public void Step_TripThatSomebodyCleared_EndsByThem(string? name, string told)
    {
        Bench bench = new(Row("a", _ => _holds) with { RisesNow = _ => _holds == true, ClearSeconds = 30 });
        Clear(bench, name);
        bench.Live(3);
        Assert.Equal((AlarmEventKind.Returned, told), (bench.Events[^1].Kind, bench.Events[^1].Who));
        Assert.Equal(told, bench["a"].ClearedBy);
        _holds = true;
        bench.Live(1);
        Assert.Null(bench["a"].ClearedBy);
    }

    [Fact]
    public void Step_TripThatCameBackBeforeItsAlarmWasOver_EndsByItself()
    {
        Bench bench = new(Row("a", _ => _holds) with { RisesNow = _ => _holds == true, ClearSeconds = 30 });
        Clear(bench, "Robin");
        _holds = true;
        bench.Live(1);
        _holds = false;
        bench.Live(3);
        Assert.Equal((AlarmEventKind.Returned, null), (bench.Events[^1].Kind, bench.Events[^1].Who));
    }

    [Fact]
    public void Step_TripThatControlDidNotClear_IsNotSaidToBeCleared()
    {
        Bench bench = new(Row("a", _ => _holds) with { RisesNow = _ => true });
        Clear(bench, "Robin");
        Assert.Equal((AlarmEventKind.Returned, null), (bench.Events[^1].Kind, bench.Events[^1].Who));
    }

    [Fact]
    public void Step_SignThatComesAndGoes_RaisesWithABridgeAndNotWithout()
    {
        Bench bench = new(
            Row("plain", f => f.At.MonotonicMilliseconds / 10_000 % 6 == 0) with { DelaySeconds = 120 },
            Row("bridged", f => f.At.MonotonicMilliseconds / 10_000 % 6 == 0, group: AlarmGroup.Heap) with { DelaySeconds = 120, BridgeSeconds = 60, ClearSeconds = 60 });
        bench.Live(60);
        Assert.Equal(["bridged"], bench.Events.Select(one => one.Key));
    }

    [Fact]
    public void Step_SignThatCannotBeTold_NeitherRaisesNorEnds()
    {
        Bench bench = new(Row("a", _ => _holds) with { DelaySeconds = 60, ClearSeconds = 60 });
        _holds = true;
        bench.Live(3);
        _holds = null;
        bench.Live(500);
        Assert.Empty(bench.Events);
        _holds = true;
        bench.Live(4);
        Assert.Single(bench.Events);
        _holds = null;
        bench.Live(500);
        Assert.Equal(AlarmPhase.Standing, bench["a"].Phase);
    }

    [Fact]
    public void Step_CauseThatStands_HoldsBackWhatFollowsUntilItIsOver()
    {
        Bench bench = new(Row("cause", _ => _holds), Row("effect", _ => _other) with { FollowsFrom = ["cause", "elsewhere"], DelaySeconds = 20 });
        (_holds, _other) = (true, true);
        bench.Live(100);
        Assert.Equal(["cause"], bench.Events.Select(one => one.Key));
        Assert.Equal("cause", bench["effect"].HeldBackBy);
        _holds = false;
        bench.Live(2);
        Assert.Equal(["cause", "cause", "effect"], bench.Events.Select(one => one.Key));
        Assert.Null(bench["effect"].HeldBackBy);
    }

    [Fact]
    public void Step_SeveralOfAGroup_MarksTheFirstOnly()
    {
        Bench bench = new(
            Row("a", f => f.At.MonotonicMilliseconds >= 50_000), Row("b", f => f.At.MonotonicMilliseconds >= 20_000), Row("c", f => f.At.MonotonicMilliseconds >= 20_000),
            Row("far", f => f.At.MonotonicMilliseconds >= 50_000, group: AlarmGroup.Heap));
        bench.Live(10);
        Assert.Equal([("b", true), ("c", false), ("a", false), ("far", true)], bench.Events.Select(one => (one.Key, one.FirstUp)));
    }

    [Theory]
    [InlineData(-40L * 365 * 86_400_000)]
    [InlineData(3_600_000)]
    [InlineData(400L * 86_400_000)]
    public void Step_WallClockThatJumps_NeitherRaisesNorEndsAnything(long jump)
    {
        Bench still = new(Row("a", _ => _holds) with { DelaySeconds = 600, ClearSeconds = 600 });
        Bench jumping = new(Row("a", _ => _holds) with { DelaySeconds = 600, ClearSeconds = 600 });
        for (int i = 0; i < 400; i++)
        {
            _holds = i is > 20 and < 200;
            jumping.WallOffsetMilliseconds = i % 7 == 3 ? jump : 0;
            still.Live(1);
            jumping.Live(1);
            Assert.Equal(still["a"].Phase, jumping["a"].Phase);
        }

        Assert.Equal(still.Events.Select(one => (one.Number, one.Kind)), jumping.Events.Select(one => (one.Number, one.Kind)));
    }

    [Fact]
    public void Step_TicksThatFellOut_CountForTwoMinutesAtMost()
    {
        Bench bench = new(Row("a", _ => true) with { DelaySeconds = 600 });
        bench.Live(1);
        bench.Step(Sound(100_000));
        Assert.Equal(120, bench.State.Seconds);
        Assert.Empty(bench.Events);
    }

    [Fact]
    public void Step_StandingForItsReminder_AsksToBeSeenAgain()
    {
        Bench bench = new(Row("a", _ => true) with { RemindSeconds = 100 });
        bench.Live(1);
        bench.State = AlarmHands.See(bench.Table, bench.State, 0, "Robin", 0).State;
        bench.Live(9);
        Assert.False(bench["a"].Unseen);
        bench.Live(1);
        Assert.True(bench["a"].Unseen);
        Assert.Equal(AlarmEventKind.Reminded, bench.Events[^1].Kind);
    }

    [Fact]
    public void Step_CountsBegunAnewWithTheProgram_TellWhatCameSince()
    {
        AlarmFacts? seen = null;
        Bench bench = new(Row("a", f =>
        {
            seen = f;
            return false;
        }));
        bench.Live(1, f => f with { Tally = new(7, 0, 0, 0) });
        bench.Live(1, f => f with { Tally = new(9, 0, 0, 0) });
        Assert.Equal(2, seen!.Since.Missed);
        bench.Live(1, f => f with { Tally = new(1, 0, 0, 0) });
        Assert.Equal(1, seen.Since.Missed);
    }

    [Fact]
    public void Step_ManyEvents_KeepsTheNewest()
    {
        Bench bench = new(Row("a", f => f.At.MonotonicMilliseconds / 10_000 % 2 == 0));
        bench.Live(2000);
        Assert.Equal(AlarmState.MostRecent, bench.State.Recent.Count);
        Assert.Equal(bench.State.Number, bench.State.Recent[^1].Number);
        Assert.Equal(Enumerable.Range(0, AlarmState.MostRecent).Select(i => bench.State.Recent[0].Number + i), bench.State.Recent.Select(one => one.Number));
    }

    // Trips and clears it at the tick after.
    private void Clear(Bench bench, string? name)
    {
        _holds = true;
        bench.Live(2);
        _holds = false;
        bench.Live(1, facts => facts with { Commands = [new ClearTrip("a") { Asker = new Asker(name, null, "here") }] });
    }
}
