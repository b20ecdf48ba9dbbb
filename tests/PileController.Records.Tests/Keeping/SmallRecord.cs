using Microsoft.Extensions.Time.Testing;
using PileController.Records.Checking;
using PileController.Records.Keeping;
using PileController.Records.Queries;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

/// <summary>A record with small blocks, days and files, so that a few hundred ticks see all of its life.</summary>
internal static class SmallRecord
{
    public static RecordOptions Options { get; } = new()
    {
        DataDirectory = "simulated",
        BlockTicks = 20,
        DayTicks = 40,
        FileTicks = 80,
        KeepTicks = 80,
        KeepMinuteTicks = 120,
    };

    public static RecordKeeper Open(SimulatedDisk disk, RecordOptions? options = null, Faults? faults = null) =>
        new(disk, options ?? Options, new FakeTimeProvider(), faults ?? new Faults());

    /// <summary>Writes ticks in one session and closes.</summary>
    public static void Write(SimulatedDisk disk, IEnumerable<TickEntry> ticks, RecordOptions? options = null)
    {
        using RecordKeeper keeper = Open(disk, options);
        foreach (TickEntry tick in ticks)
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }
    }

    public static VerifyReport Verify(SimulatedDisk disk)
    {
        using RecordReader reader = RecordReader.Open(disk);
        return RecordVerifier.Check(reader.Contents, reader.Problems);
    }

    /// <summary>All decision lines, oldest first.</summary>
    public static IReadOnlyList<DecisionLine> Lines(RecordContents contents) =>
        [.. RecordQueries.Decisions(contents, new QueryCache(), new DecisionAsk(long.MinValue, long.MaxValue), problem => Assert.Fail(problem)).Reverse()];

    /// <summary>All of a series in buckets.</summary>
    public static IReadOnlyList<SeriesPoint> Samples(RecordContents contents, string series, long step) => RecordQueries.Samples(
        contents, new QueryCache(), [series], TimeRange.All, step, problem => Assert.Fail(problem))[0];
}
