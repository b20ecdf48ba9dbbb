using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Checking;
using PileController.Records.Storage;
using PileController.Records.Tests.Storage;
using PileController.Records.Tests.Summaries;

namespace PileController.Records.Tests.Keeping;

public sealed class ClockFuzzTests
{
    private const int Histories = 1000;
    private const int Ticks = 160;
    private const long Day = 86_400_000;
    private static readonly RecordOptions Options = SmallRecord.Options with { KeepTicks = 40, KeepMinuteTicks = 80 };

    [Fact]
    public void Record_UnderAnyClock_LosesNothingAndDeletesByCountOnly()
    {
        for (int seed = 0; seed < Histories; seed++)
        {
            List<List<TickEntry>> sessions = ClockHistory.Of(new Random(seed), Ticks);
            SimulatedDisk disk = new();
            sessions.ForEach(session => SmallRecord.Write(disk, session, Options));

            AssertWhole(disk, [.. sessions.SelectMany(session => session).Select(tick => tick.Decision)], seed);
        }
    }

    private static void AssertWhole(SimulatedDisk disk, IReadOnlyList<Decision> history, int seed)
    {
        VerifyReport report = SmallRecord.Verify(disk);
        Assert.True(report.IsClean, $"History {seed}: {string.Join(" ", report.Problems)}");
        Assert.Equal((Ticks, Ticks / Options.DayTicks), ((int)report.LastSequence, report.Days));
        Assert.Empty(disk.Quarantined);

        using RecordReader reader = RecordReader.Open(disk);
        AssertKept(reader.Contents.Store.Ticks, Options.KeepTicks);
        AssertKept(reader.Contents.Store.Minutes, Options.KeepMinuteTicks);
        Assert.Equal(
            history.Where(d => d.Kinds != DecisionKinds.Steady).Select(d => (d.Sequence, d.At.UtcMilliseconds)),
            SmallRecord.Lines(reader.Contents).Select(line => (line.Sequence, line.UtcMilliseconds)));
        double[] house = [.. history.Where(d => d.Readings[Channel.House].IsGood).Select(d => d.Readings[Channel.House].ValueOf(Channel.House))];
        IReadOnlyList<SeriesPoint> points = SmallRecord.Samples(reader.Contents, "house", Day);
        Assert.Equal(house.Length, points.Sum(point => point.Count));
        Assert.Equal(house.Min(), points.Min(point => point.Least));
        Assert.Equal(house.Max(), points.Max(point => point.Most));
        Assert.Equal(house.Sum(), points.Sum(point => (point.Mean * point.Count) ?? 0), 1e-6);
        Assert.Equal(points.OrderBy(point => point.UtcMilliseconds), points);
    }

    // As many whole files are gone as the count of recorded ticks allows, whatever the clock said.
    private static void AssertKept(RecordShelf shelf, long keepTicks)
    {
        long afterTheOldest = shelf.Files.Skip(1).Sum(file => file.Span.Ticks);
        Assert.InRange(afterTheOldest, 0, keepTicks - 1);
        Assert.True(shelf.Files.Sum(file => file.Span.Ticks) >= keepTicks);
    }
}
