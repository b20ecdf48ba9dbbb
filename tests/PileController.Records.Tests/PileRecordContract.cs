using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Records.Accounts;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Packing;

namespace PileController.Records.Tests;

/// <summary>What every record promises.</summary>
public abstract class PileRecordContract
{
    private const int Ticks = 500;
    private static readonly List<TickEntry> History = TrialTicks.First(Ticks);

    public static TheoryData<string> AllSeries => [.. RecordSeries.All.Select(series => series.Name)];

    private static TickFigures Sum(IEnumerable<BlockAccount> blocks) =>
        blocks.Aggregate(default(TickFigures), (sum, block) => sum.Plus(block.Figures));

    private static CancellationToken None => CancellationToken.None;

    protected abstract IPileRecord Make();

    [Fact]
    public async Task Record_Empty_HasNothing()
    {
        await using IPileRecord record = Make();

        Assert.Null(await record.LastMemoryAsync(None));
        Assert.Empty(await record.SamplesAsync("house", 0, long.MaxValue, 0, None));
        Assert.Empty(await record.DecisionsAsync(0, long.MaxValue, null, 10, None));
        Assert.Equal(0, record.Health.LastSequence);
    }

    [Fact]
    public async Task Record_AfterFlush_KnowsTheLastTick()
    {
        await using IPileRecord record = await Filled();

        await record.FlushAsync(None);

        Assert.Equal(Ticks, record.Health.LastSequence);
        Assert.True(record.Health.Accepting);
        SameMemory.Assert(History[^1].MemoryAfter, await record.LastMemoryAsync(None));
    }

    [Theory]
    [MemberData(nameof(AllSeries))]
    public async Task Samples_EverySeriesAndStep_AreThoseOfThePlainRecord(string series)
    {
        await using IPileRecord record = await Filled();
        await using MemoryRecord plain = new();
        History.ForEach(tick => plain.TryAppend(tick));
        long from = TrialTicks.At(17).UtcMilliseconds;
        long to = TrialTicks.At(444).UtcMilliseconds;
        foreach (long step in new[] { 0L, 60_000, 900_000, 7_000_000 })
        {
            IReadOnlyList<SeriesPoint> expected = await plain.SamplesAsync(series, from, to, step, None);
            IReadOnlyList<SeriesPoint> actual = await record.SamplesAsync(series, from, to, step, None);

            Assert.Equal(expected.Select(p => (p.UtcMilliseconds, p.Count)), actual.Select(p => (p.UtcMilliseconds, p.Count)));
            Assert.All(expected.Zip(actual), pair =>
            {
                // A kept figure is rounded to a tenth of a watt at the coarsest.
                Assert.Equal(pair.First.Least ?? -1, pair.Second.Least ?? -1, 0.051);
                Assert.Equal(pair.First.Mean ?? -1, pair.Second.Mean ?? -1, 0.051);
                Assert.Equal(pair.First.Most ?? -1, pair.Second.Most ?? -1, 0.051);
            });
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(123)]
    [InlineData(361)]
    [InlineData(500)]
    public async Task Tick_ThatIsKept_CanBeDecidedAgainToTheSameBits(long sequence)
    {
        await using IPileRecord record = await Filled();
        TickEntry expected = History[(int)sequence - 1];

        RecalledTick? tick = await record.TickAsync(sequence, _ => TrialTicks.Step, None);

        Assert.NotNull(tick);
        Assert.Equal(expected.Decision.At, tick.At);
        (Decision decision, Memory after) = TrialTicks.Step(tick.Before, tick.Raw, tick.Commands, tick.At);
        Assert.Equal(new DecisionDigest().Of(expected.Decision), new DecisionDigest().Of(decision));
        SameMemory.Assert(expected.MemoryAfter, after);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(501)]
    public async Task Tick_ThatIsNotThere_IsNone(long sequence)
    {
        await using IPileRecord record = await Filled();

        Assert.Null(await record.TickAsync(sequence, _ => TrialTicks.Step, None));
    }

    [Fact]
    public async Task Tick_OfSettingsNobodyKnows_IsNone()
    {
        await using IPileRecord record = await Filled();

        Assert.Null(await record.TickAsync(7, _ => null, None));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(123)]
    [InlineData(499)]
    public async Task Accounts_FromAnyTickOn_CountEachTickOnceAndComeToWhatThePlainRecordSays(long after)
    {
        AccountRules rules = new(10, 18.72, 19.97, _ => 60);
        List<TickEntry> lit = [.. TrialTicks.From(Memory.Fresh with { Estimator = Memory.Fresh.Estimator with { Lit = true } }, 3).Take(Ticks)];
        await using IPileRecord record = Make();
        await using MemoryRecord plain = new();
        lit.ForEach(tick => record.TryAppend(tick));
        lit.ForEach(tick => plain.TryAppend(tick));

        List<BlockAccount> blocks = [];
        long next = after;
        while (await record.AccountsAsync(next, 2, _ => rules, None) is { Count: > 0 } some)
        {
            Assert.InRange(some.Count, 1, 2);
            blocks.AddRange(some);
            next = some[^1].LastSequence;
        }

        long expected = after;
        foreach (BlockAccount block in blocks)
        {
            Assert.Equal(expected + 1, block.FirstSequence);
            Assert.Equal(block.LastSequence - block.FirstSequence + 1, block.Figures.Ticks);
            Assert.Equal(lit[(int)block.FirstSequence - 1].Decision.At.UtcMilliseconds, block.FirstUtcMilliseconds);
            Assert.Equal(lit[(int)block.LastSequence - 1].Decision.At.UtcMilliseconds, block.LastUtcMilliseconds);
            Assert.Equal(lit[(int)block.LastSequence - 1].Decision.Totals, block.After);
            Assert.True(block.Before is null ? block == blocks[0] && after > 0 : block.Before == lit[(int)block.FirstSequence - 1].MemoryBefore.Totals);
            expected = block.LastSequence;
        }

        Assert.Equal(Ticks, expected);
        // Starts are counted anew at the head of each block; the others do not know of blocks.
        TickFigures sum = Sum(blocks) with { PumpStarts = 0 };
        TickFigures plainSum = Sum(await plain.AccountsAsync(after, Ticks, _ => rules, None)) with { PumpStarts = 0 };
        // A kept figure is rounded to a tenth of a watt.
        Assert.Equal(plainSum.NetJoules, sum.NetJoules, 0.051 * 10 * Ticks);
        Assert.Equal(plainSum with { NetJoules = 0 }, sum with { NetJoules = 0 });
        Assert.True(after > 100 || (sum.BelowFloorSeconds > 0 && sum.BelowFloorSeconds < sum.RecordedSeconds));
    }

    [Fact]
    public async Task Samples_TicksMissing_ShowOneEmptyPoint()
    {
        await using IPileRecord record = Make();
        foreach (TickEntry tick in History.Where(t => t.Decision.Sequence is <= 60 or > 120))
        {
            record.TryAppend(tick);
        }

        foreach (long step in new[] { 0L, 60_000 })
        {
            IReadOnlyList<SeriesPoint> points = await record.SamplesAsync("pumpDuty", 0, long.MaxValue, step, None);

            SeriesPoint gap = Assert.Single(points, point => point.Mean is null);
            Assert.InRange(gap.UtcMilliseconds, TrialTicks.At(60).UtcMilliseconds, TrialTicks.At(121).UtcMilliseconds);
            Assert.Equal(points.OrderBy(p => p.UtcMilliseconds), points);
        }
    }

    [Fact]
    public async Task Samples_ClockSetBack_StillAnswersInOrderOfTime()
    {
        await using IPileRecord record = Make();
        Memory memory = Memory.Fresh;
        foreach (TickEntry tick in History.Take(200))
        {
            Instant at = tick.Decision.Sequence < 100
                ? tick.Decision.At
                : tick.Decision.At with { UtcMilliseconds = tick.Decision.At.UtcMilliseconds - 600_000 };
            (Decision decision, Memory after) = TrialTicks.Step(memory, tick.Raw, tick.Commands, at);
            record.TryAppend(new TickEntry(tick.Raw, tick.Commands, memory, decision, after));
            memory = after;
        }

        IReadOnlyList<SeriesPoint> points = await record.SamplesAsync("want", 0, long.MaxValue, 60_000, None);

        Assert.Equal(points.OrderBy(p => p.UtcMilliseconds), points);
        Assert.Equal(200, points.Sum(p => p.Count));
    }

    [Fact]
    public async Task Samples_UnknownSeries_IsRefusedByName()
    {
        await using IPileRecord record = Make();

        ArgumentException error = await Assert.ThrowsAsync<ArgumentException>(
            () => record.SamplesAsync("heapCorr", 0, 1, 0, None));
        Assert.Contains("heapCorr", error.Message, StringComparison.Ordinal);
        Assert.Contains("heapCore", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, 1000)]
    [InlineData(null, 3)]
    [InlineData(DecisionKinds.Mode, 1000)]
    [InlineData(DecisionKinds.Hand | DecisionKinds.Trip, 4)]
    [InlineData(DecisionKinds.Start, 5)]
    public async Task Decisions_ByKindAndLimit_AreThoseOfThePlainRecord(DecisionKinds? kinds, int limit)
    {
        await using IPileRecord record = await Filled();
        await using MemoryRecord plain = new();
        History.ForEach(tick => plain.TryAppend(tick));
        long from = TrialTicks.At(5).UtcMilliseconds;
        long to = TrialTicks.At(480).UtcMilliseconds;

        Assert.Equal(
            await plain.DecisionsAsync(from, to, kinds, limit, None),
            await record.DecisionsAsync(from, to, kinds, limit, None));
    }

    [Theory]
    [InlineData(Mode.Drawing, null, null)]
    [InlineData(null, Curb.Floor, null)]
    [InlineData(null, null, "TAKEN, 1")]
    [InlineData(Mode.Priming, Curb.Means, "taken")]
    public async Task Decisions_ByModeCurbAndText_AreThoseOfThePlainRecord(Mode? mode, Curb? curb, string? text)
    {
        await using IPileRecord record = await Filled();
        await using MemoryRecord plain = new();
        History.ForEach(tick => plain.TryAppend(tick));
        DecisionAsk ask = new(0, long.MaxValue) { Mode = mode, Curb = curb, Text = text, Limit = 3 };

        Assert.Equal(await plain.DecisionsAsync(ask, None), await record.DecisionsAsync(ask, None));
    }

    [Fact]
    public async Task Samples_OfSeveralSeries_AreThoseOfEach()
    {
        await using IPileRecord record = await Filled();
        string[] series = ["house", "want", "mode"];

        IReadOnlyList<IReadOnlyList<SeriesPoint>> all = await record.SamplesAsync(series, 0, long.MaxValue, 60_000, None);

        Assert.Equal(series.Length, all.Count);
        for (int one = 0; one < series.Length; one++)
        {
            Assert.Equal(await record.SamplesAsync(series[one], 0, long.MaxValue, 60_000, None), all[one]);
        }
    }

    private Task<IPileRecord> Filled()
    {
        IPileRecord record = Make();
        Assert.All(History, tick => Assert.True(record.TryAppend(tick)));
        return Task.FromResult(record);
    }
}
