using Microsoft.Extensions.Time.Testing;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Service;

public class TickLoopTests
{
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(10);

    [Fact]
    public async Task Loop_BeforeItStarts_MakesTheOutputsSafe()
    {
        using LoopBench bench = new();

        await bench.Loop.StartingAsync(CancellationToken.None);

        Assert.Equal(["safe"], bench.Rig.Calls);
        Assert.Equal(Outputs.Safe, bench.Rig.Told);
    }

    [Fact]
    public async Task Loop_OneTick_ReadsThenActsThenRecordsThenTells()
    {
        using LoopBench bench = new();
        string[] callsAtAppend = [];
        bool toldAtAppend = true;
        bench.Record.Takes = _ =>
        {
            callsAtAppend = [.. bench.Rig.Calls];
            toldAtAppend = bench.Feed.Latest is not null;
            return true;
        };

        await bench.StartAsync();
        TickNews news = await bench.ToldAsync(1);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(["safe", "read", $"pump {news.Decision.Outputs.PumpDuty}"], callsAtAppend);
        Assert.False(toldAtAppend);
        Assert.Equal("safe", bench.Rig.Calls.Last());
        Assert.Equal(Outputs.Safe, bench.Rig.Told);
        Assert.Equal(0, bench.Rig.Overlaps);
    }

    [Fact]
    public async Task Loop_ClockMoves_TicksOnceEachTick()
    {
        using LoopBench bench = new();
        await bench.StartAsync();
        await bench.ToldAsync(1);

        for (long sequence = 2; sequence <= 4; sequence++)
        {
            await bench.AdvanceAsync(Tick);
            TickNews news = await bench.ToldAsync(sequence);
            Assert.Equal(sequence, news.Sequence);
            Assert.Equal((sequence - 1) * 10_000, news.Decision.At.MonotonicMilliseconds);
        }

        await bench.Loop.StopAsync(CancellationToken.None);
        Assert.Equal(4, bench.Record.Ticks.Count);
        Assert.Equal(0, bench.Counts.Missed);
    }

    [Fact]
    public async Task Loop_CommandPosted_EntersTheVeryTickItWasPromised()
    {
        using LoopBench bench = new();
        await bench.StartAsync();
        await bench.ToldAsync(1);

        Assert.True(bench.Inbox.TryPost(new TakeByHand(Actuator.Pump, 0.9, 600_000, "Robin"), out long promised));
        await bench.AdvanceAsync(Tick);
        TickNews news = await bench.ToldAsync(2);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(2, promised);
        Assert.Equal(promised, news.Sequence);
        Assert.Equal(0.9, news.Decision.Outputs.PumpDuty);
        Assert.IsType<TakeByHand>(Assert.Single(bench.Record.Ticks.Last().Commands));
    }

    [Fact]
    public async Task Loop_StepThrows_MakesSafeKeepsMemoryAndGoesOn()
    {
        CannedControl control = new();
        int steps = 0;
        List<Memory> given = [];
        using LoopBench failing = new((settings, memory, readings, commands, at) =>
        {
            given.Add(memory);
            return ++steps == 2 ? throw new InvalidOperationException("no root found") : control.Step(settings, memory, readings, commands, at);
        });
        await failing.StartAsync();
        await failing.ToldAsync(1);

        await failing.AdvanceAsync(Tick);
        await LoopBench.UntilAsync(() => failing.Counts.StepFaults == 1 && failing.Rig.Told == Outputs.Safe);
        Assert.Equal("safe", failing.Rig.Calls.Last());

        await failing.AdvanceAsync(Tick);
        await failing.ToldAsync(2);
        await failing.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(given[1], given[2]);
        Assert.Equal(1, given[1].Sequence);
        Assert.Contains("no root found", failing.Counts.LastFault);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Loop_StoreFails_ControlGoesOnAndIsTold(bool throws)
    {
        using LoopBench bench = new();
        bench.Record.Takes = _ => throws ? throw new IOException("the card is gone") : false;
        await bench.StartAsync();
        await bench.ToldAsync(1);

        await bench.AdvanceAsync(Tick);
        TickNews news = await bench.ToldAsync(2);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.NotEqual(Outputs.Safe, news.Decision.Outputs);
        Assert.Empty(bench.Control.Seen[0]);
        Assert.True(Assert.IsType<ReportTick>(Assert.Single(bench.Control.Seen[1])).StoreFailing);
    }

    [Fact]
    public async Task Loop_MachineStoodStill_CountsMissedTicksAndReportsTheLateness()
    {
        using LoopBench bench = new();
        await bench.StartAsync();
        await bench.ToldAsync(1);

        await bench.AdvanceAsync(TimeSpan.FromSeconds(47));
        await bench.ToldAsync(2);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(3, bench.Counts.Missed);
        Assert.Equal(37_000, Assert.IsType<ReportTick>(Assert.Single(bench.Control.Seen[1])).LateMilliseconds);
    }

    [Fact]
    public async Task Loop_WallClockJumps_ReportsTheJumpAndKeepsDurations()
    {
        using LoopBench bench = new();
        await bench.StartAsync();
        await bench.ToldAsync(1);

        bench.Clock.Jump = TimeSpan.FromHours(1);
        await bench.AdvanceAsync(Tick);
        TickNews news = await bench.ToldAsync(2);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(10_000, news.Decision.At.MonotonicMilliseconds);
        Assert.Equal(3_600_000, Assert.IsType<ReportTick>(Assert.Single(bench.Control.Seen[1])).ClockJumpMilliseconds);
    }

    [Fact]
    public async Task Loop_RigCannotBeRead_GivesControlSilenceNotOldNumbers()
    {
        using LoopBench bench = new();
        bench.Rig.Reads = _ => throw new IOException("the bus is gone");
        await bench.StartAsync();
        TickNews news = await bench.ToldAsync(1);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(ReadingQuality.NoAnswer, news.Raw[Channel.House].Quality);
        Assert.Equal(ReadingQuality.NotFitted, news.Raw[Channel.Sun].Quality);
        Assert.Equal(1, bench.Counts.RigFaults);
    }

    [Fact]
    public async Task Loop_RigRefusesOutputs_IsToldSafeAndTheLoopGoesOn()
    {
        using LoopBench bench = new();
        bench.Rig.Refuses = outputs => outputs == Outputs.Safe ? null : new IOException("the relay board is gone");
        await bench.StartAsync();
        await bench.ToldAsync(1);
        await bench.AdvanceAsync(Tick);
        await bench.ToldAsync(2);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(2, bench.Counts.RigFaults);
        Assert.Equal(Outputs.Safe, bench.Rig.Told);
    }

    [Fact]
    public async Task Loop_Resumed_GoesOnWithTheSequence()
    {
        using LoopBench bench = new(start: Memory.Fresh with { Sequence = 41 });
        await bench.StartAsync();
        TickNews news = await bench.ToldAsync(42);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(42, news.Sequence);
    }

    [Fact]
    public async Task Loop_AReadingThatHangs_IsGivenUpAndAskedForNoSecondTime()
    {
        FakeTimeProvider trueTime = new();
        using LoopBench bench = new(trueTime: trueTime);
        TaskCompletionSource hang = new();
        bench.Rig.Hangs = hang.Task;
        await bench.StartAsync();

        await GiveUpAsync(bench, trueTime, 1);
        Assert.Equal(ReadingQuality.NoAnswer, bench.Feed.Latest!.Raw[Channel.House].Quality);
        Assert.False(bench.Counts.RigAnswers);
        await bench.AdvanceAsync(Tick);
        await bench.ToldAsync(2);
        Assert.Equal(1, bench.Rig.Calls.Count(call => call == "read"));

        // What answers at last is of another time: the next tick asks anew.
        hang.SetResult();
        await bench.AdvanceAsync(Tick);
        await bench.ToldAsync(3);
        await bench.Loop.StopAsync(CancellationToken.None);
        Assert.True(bench.Counts.RigAnswers);
        Assert.Equal(2, bench.Rig.Calls.Count(call => call == "read"));
    }

    [Fact]
    public async Task Loop_StartedAgainAndAgain_SaysSoAtItsFirstTickOnly()
    {
        using LoopBench bench = new(restarts: 5);
        await bench.StartAsync();
        await bench.ToldAsync(1);
        await bench.AdvanceAsync(Tick);
        await bench.ToldAsync(2);
        await bench.Loop.StopAsync(CancellationToken.None);

        Assert.Equal(5, Assert.IsType<ReportTick>(Assert.Single(bench.Control.Seen[0])).Restarts);
        Assert.Empty(bench.Control.Seen[1]);
    }

    private static async Task GiveUpAsync(LoopBench bench, FakeTimeProvider trueTime, long sequence)
    {
        // The clock is moved until the tick is told: the wait may begin at any moment.
        Task told = bench.ToldAsync(sequence);
        await LoopBench.UntilAsync(() =>
        {
            trueTime.Advance(TimeSpan.FromSeconds(5));
            return told.IsCompleted;
        });
    }
}
