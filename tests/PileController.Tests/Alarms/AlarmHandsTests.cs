using PileController.Alarms;
using static PileController.Tests.Alarms.Bench;

namespace PileController.Tests.Alarms;

public class AlarmHandsTests
{
    private bool? _holds = true;

    [Fact]
    public void See_WhatStands_IsSeenAndEndsWithoutAnotherLook()
    {
        Bench bench = new(Row("a", _ => _holds));
        bench.Live(1);
        See(bench);
        Assert.Equal("Robin", bench["a"].SeenBy);
        _holds = false;
        bench.Live(1);
        Assert.False(bench["a"].Listed);
    }

    [Fact]
    public void See_WhatEndedUnseen_TakesItOffTheList()
    {
        Bench bench = new(Row("a", _ => _holds));
        bench.Live(1);
        _holds = false;
        bench.Live(5);
        Assert.True(bench["a"].Listed);
        See(bench);
        Assert.False(bench["a"].Listed);
    }

    [Fact]
    public void Shelve_WhatStands_IsNotListedUntilTheTimeIsOverAndThenAsksAgain()
    {
        Bench bench = new(Row("a", _ => _holds));
        bench.Live(1);
        See(bench);
        bench.State = AlarmHands.Shelve(bench.Table, bench.State, 0, 600, "Robin", 0).State;
        bench.Live(59);
        Assert.False(bench["a"].Listed);
        Assert.True(bench["a"].Shelved);
        bench.Live(1);
        Assert.True(bench["a"].Listed);
        Assert.True(bench["a"].Unseen);
        Assert.Equal((AlarmEventKind.ShelfEnded, false), (bench.Events[^1].Kind, bench.Events[^1].Quiet));
    }

    [Fact]
    public void Shelve_WhatRisesOnTheShelf_IsToldToNobody()
    {
        Bench bench = new(Row("a", _ => _holds));
        bench.State = AlarmHands.Shelve(bench.Table, bench.State, 0, 600, "Robin", 0).State;
        bench.Live(10);
        Assert.True(Assert.Single(bench.Events).Quiet);
        Assert.False(bench["a"].Listed);
    }

    [Fact]
    public void Unshelve_WhatStands_IsListedAndUnseen()
    {
        Bench bench = new(Row("a", _ => _holds));
        bench.Live(1);
        See(bench);
        bench.State = AlarmHands.Shelve(bench.Table, bench.State, 0, 600, "Robin", 0).State;
        bench.State = AlarmHands.Unshelve(bench.Table, bench.State, 0, "Robin", 0).State;
        Assert.True(bench["a"].Listed);
        Assert.True(bench["a"].Unseen);
    }

    [Theory]
    [InlineData(false, 24 * 3600, true)]
    [InlineData(false, (24 * 3600) + 1, false)]
    [InlineData(true, 1800, true)]
    [InlineData(true, 1801, false)]
    public void WhyNotShelved_AnAlarm_HasItsLongestTime(bool people, double seconds, bool allowed)
    {
        AlarmRow row = Row("a", _ => true) with { ProtectsPeople = people };
        Assert.Equal(allowed, AlarmHands.WhyNotShelved(row, seconds) is null);
        Bench bench = new(row);
        if (!allowed)
        {
            Assert.Contains(people ? "30 minutes" : "24 hours", AlarmHands.WhyNotShelved(row, seconds), StringComparison.Ordinal);
            Assert.Throws<ArgumentOutOfRangeException>(() => AlarmHands.Shelve(bench.Table, bench.State, 0, seconds, "Robin", 0));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Shelve_NoTime_IsRefused(double seconds)
    {
        Bench bench = new(Row("a", _ => true));
        Assert.Throws<ArgumentOutOfRangeException>(() => AlarmHands.Shelve(bench.Table, bench.State, 0, seconds, "Robin", 0));
    }

    private static void See(Bench bench) => bench.State = AlarmHands.See(bench.Table, bench.State, 0, "Robin", 0).State;
}
