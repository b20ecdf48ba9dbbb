using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Queries;
using PileController.Records.Storage;
using PileController.Records.Summaries;
using PileController.Records.Tests.Keeping;
using PileController.Records.Tests.Storage;
using PileController.Records.Tests.Summaries;

namespace PileController.Records.Tests.Queries;

/// <summary>Series that are answered from summaries.</summary>
public sealed class SamplesQueryTests
{
    private const long Minute = 60_000;
    private const int Ticks = 1080;
    private static readonly List<TickEntry> History = TrialTicks.First(Ticks, seed: 21);
    private static readonly RecordOptions Options = SmallRecord.Options with { BlockTicks = 60, DayTicks = 360, FileTicks = 360 };

    [Theory]
    [InlineData(4, 1, 6)]
    [InlineData(60, 15, 90)]
    [InlineData(240, 60, 360)]
    public void Samples_TicksGone_EveryPointHoldsItsRows(int stepMinutes, int rowMinutes, int rowTicks)
    {
        using RecordKeeper keeper = SmallRecord.Open(Written(Options));
        Assert.True(keeper.Contents().Store.Ticks.FirstSequence > 360);
        foreach (int series in new[] { 0, SummarySeries.FirstFigure, SummarySeries.FirstChannel + (int)Channel.Supply })
        {
            IReadOnlyList<SeriesPoint> points = SmallRecord.Samples(keeper.Contents(), NameOf(series), stepMinutes * Minute);
            List<(long Bucket, SummaryCell Cell)> expected = [.. PlainRows(rowTicks)
                .Select(row => ((row.FirstUtc + ((row.LastUtc - row.FirstUtc) / 2)) / (stepMinutes * Minute) * stepMinutes * Minute, row.Cells[series]))
                .GroupBy(pair => pair.Item1, pair => pair.Item2)
                .Select(group => (group.Key, group.Aggregate((one, other) => one.Plus(other))))];

            Assert.Equal(
                expected.Select(pair => (pair.Bucket, pair.Cell.Good)), points.Select(point => (point.UtcMilliseconds, (long)point.Count)));
            Assert.Equal(expected.Select(pair => Unit(series, pair.Cell, pair.Cell.Least)), points.Select(point => point.Least));
            Assert.Equal(expected.Select(pair => Unit(series, pair.Cell, pair.Cell.Most)), points.Select(point => point.Most));
            Assert.Equal(
                expected.Select(pair => Unit(series, pair.Cell, (double)pair.Cell.Sum / pair.Cell.Good)),
                points.Select(point => point.Mean));
        }

        Assert.Equal(rowMinutes * 6, rowTicks);
    }

    [Fact]
    public void Samples_OfEveryTick_TicksGone_AreTheMinutesThatAreLeft()
    {
        using RecordKeeper keeper = SmallRecord.Open(Written(Options));
        long first = keeper.Contents().Store.Ticks.FirstSequence;

        IReadOnlyList<SeriesPoint> points = SmallRecord.Samples(keeper.Contents(), "want", 0);

        // Files hold whole blocks, days whole numbers of ticks: a day of which some ticks are gone is answered by minutes.
        long byMinutes = (first + 359) / 360 * 360;
        Assert.Equal((byMinutes / 6) + Ticks - byMinutes, points.Count);
        Assert.Equal(Ticks, points.Sum(point => point.Count));
        Assert.DoesNotContain(points, point => point.Mean is null);
    }

    [Fact]
    public void Samples_MinutesGoneToo_AreTheQuartersWithoutMadeUpGaps()
    {
        SimulatedDisk disk = Written(Options);
        foreach (string name in disk.Names().Where(FileKind.Minutes.Holds).ToList())
        {
            disk.Delete(name);
        }

        using RecordKeeper keeper = SmallRecord.Open(disk);
        foreach (long step in new[] { 0, Minute, 10 * Minute })
        {
            IReadOnlyList<SeriesPoint> points = SmallRecord.Samples(keeper.Contents(), "want", step);

            Assert.Equal(Ticks, points.Sum(point => point.Count));
            Assert.DoesNotContain(points, point => point.Mean is null);
            Assert.Contains(points, point => point.Count == 90);
        }
    }

    [Fact]
    public void Samples_ServiceWasSilent_ShowOneGapInEveryTier()
    {
        const long silence = 30L * 24 * 60 * Minute;
        List<TickEntry> ticks = [.. History.Take(200), .. History.Skip(200).Select(tick => tick with
        {
            Decision = tick.Decision with { At = tick.Decision.At with { UtcMilliseconds = tick.Decision.At.UtcMilliseconds + silence } },
        })];
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, ticks, Options);
        using RecordKeeper keeper = SmallRecord.Open(disk);
        foreach (long step in new[] { 0, Minute, 4 * Minute, 60 * Minute, 240 * Minute, 24 * 60 * Minute })
        {
            IReadOnlyList<SeriesPoint> points = SmallRecord.Samples(keeper.Contents(), "want", step);

            SeriesPoint gap = Assert.Single(points, point => point.Mean is null);
            Assert.Equal((0, null, null), (gap.Count, gap.Least, gap.Most));
            Assert.Equal(Ticks, points.Sum(point => point.Count));
            Assert.Equal(points.OrderBy(point => point.UtcMilliseconds), points);
            Assert.Equal(ticks.Max(tick => tick.Decision.WantWatts), points.Max(point => point.Most)!.Value, 0.051);
        }
    }

    [Fact]
    public void Samples_PartOfTheTime_TakeOnlyRowsWhoseMiddleLiesInIt()
    {
        using RecordKeeper keeper = SmallRecord.Open(Written(Options));
        TimeRange range = new(TrialTicks.At(100).UtcMilliseconds, TrialTicks.At(300).UtcMilliseconds);

        IReadOnlyList<SeriesPoint> points = RecordQueries.Samples(
            keeper.Contents(), new QueryCache(), ["want"], range, 4 * Minute, problem => Assert.Fail(problem))[0];

        Assert.InRange(points.Sum(point => point.Count), 200 - 6, 200 + 6);
        Assert.InRange(points[0].UtcMilliseconds, range.From - (4 * Minute), range.From);
    }

    [Fact]
    public void Samples_SummariesDamaged_AreAnsweredFromAFinerOneAndTold()
    {
        // In days of 360 ticks the rows of the two coarsest tiers are the same bytes: both are damaged.
        SimulatedDisk disk = Written(Options with { KeepTicks = long.MaxValue });
        byte[] rows = Part(disk, Tier.Hour);
        string name = disk.Names().First(FileKind.Lasting.Holds);
        byte[] damaged = disk.BytesOf(name);
        for (int at = damaged.AsSpan().IndexOf(rows); at >= 0; at = damaged.AsSpan().IndexOf(rows))
        {
            damaged[at + 10] ^= 1;
        }

        disk.Replace(name, damaged);
        using RecordKeeper keeper = SmallRecord.Open(disk);
        List<string> told = [];

        IReadOnlyList<SeriesPoint> points = RecordQueries.Samples(
            keeper.Contents(), new QueryCache(), ["want"], TimeRange.All, 240 * Minute, told.Add)[0];

        Assert.Equal(2, told.Count);
        Assert.All(told, problem => Assert.Contains("checksum", problem, StringComparison.Ordinal));
        Assert.Equal(Ticks, points.Sum(point => point.Count));
    }

    [Fact]
    public void Decisions_OfADayWhoseLinesAreDamaged_ComeFromItsBlocksAndAreTold()
    {
        SimulatedDisk disk = Written(Options with { KeepTicks = long.MaxValue });
        string name = disk.Names().First(FileKind.Lasting.Holds);
        byte[] damaged = disk.BytesOf(name);
        byte[] lines;
        using (RecordStore store = RecordStore.Open(disk, 360, setAside: true))
        {
            lines = store.Lasting.Files[0].Part(LastingPart.Decisions, 1)!;
        }

        damaged[damaged.AsSpan().IndexOf(lines.AsSpan(0, 40)) + 10] ^= 1;
        disk.Replace(name, damaged);
        using RecordKeeper keeper = SmallRecord.Open(disk);
        List<string> told = [];

        IReadOnlyList<DecisionLine> found = RecordQueries.Decisions(keeper.Contents(), new QueryCache(), new DecisionAsk(0, long.MaxValue), told.Add);

        Assert.Contains("checksum", Assert.Single(told), StringComparison.Ordinal);
        Assert.Equal(
            History.Where(tick => tick.Decision.Kinds != DecisionKinds.Steady).Select(tick => tick.Decision.Sequence).Reverse(),
            found.Select(line => line.Sequence));
    }

    private static double? Unit(int series, SummaryCell cell, double quanta) =>
        cell.Good == 0 ? null : SummarySeries.ToUnit(series, quanta);

    private static SimulatedDisk Written(RecordOptions options)
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, History, options with { KeepMinuteTicks = long.MaxValue });
        return disk;
    }

    private static byte[] Part(SimulatedDisk disk, Tier tier)
    {
        using RecordStore store = RecordStore.Open(disk, 360, setAside: true);
        return store.Lasting.Files[0].Part(LastingPart.Of(tier), 1)![..40];
    }

    // Each day of ticks is cut by itself.
    private static IEnumerable<SummaryRow> PlainRows(int rowTicks) =>
        History.Chunk(Options.DayTicks).SelectMany(day => PlainSums.Rows(day, rowTicks));

    private static string NameOf(int series) => RecordSeries.All.Single(one => SummarySeries.Find(one.Name) == series).Name;
}
