using System.Text.Json;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>Some series of one batch, or why they cannot be read.</summary>
/// <param name="From">First row that is asked for.</param>
/// <param name="To">The row after the last.</param>
/// <param name="Utc">When each tick was, ms.</param>
/// <param name="Cells">The cells of each series in whole quanta.</param>
/// <param name="Damage">What is wrong with the batch, or null.</param>
internal sealed record UnpackedTicks(int From, int To, long[] Utc, long[][] Cells, string? Damage)
{
    // So many are unpacked before they are gathered: a day, and a month does not take all memory.
    private const int BatchesAtOnce = 32;

    /// <summary>Unpacks the ticks between two numbers: read by this thread, unpacked by all processors.</summary>
    public static IEnumerable<UnpackedTicks[]> Of(
        IEnumerable<StoredBatch> batches, QueryCache cache, long firstSequence, long lastSequence, IReadOnlyList<int> series)
    {
        foreach (StoredBatch[] some in batches.Chunk(BatchesAtOnce))
        {
            (PackedBatch? Batch, string? Damage)[] opened = [.. some.Select(stored => Open(stored, cache))];
            var unpacked = new UnpackedTicks[some.Length];
            Parallel.For(0, some.Length, at => unpacked[at] = opened[at].Batch is { } batch
                ? Of(some[at], batch, firstSequence, lastSequence, series)
                : Damaged(opened[at].Damage!));
            yield return unpacked;
        }
    }

    private static (PackedBatch? Batch, string? Damage) Open(StoredBatch stored, QueryCache cache)
    {
        try
        {
            return (cache.Ticks(stored), null);
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is IOException or JsonException)
        {
            return (null, stored.Damage(exception));
        }
    }

    private static UnpackedTicks Of(
        StoredBatch stored, PackedBatch batch, long firstSequence, long lastSequence, IReadOnlyList<int> series)
    {
        try
        {
            return new UnpackedTicks(
                (int)Math.Max(firstSequence - batch.FirstSequence, 0),
                (int)Math.Min(lastSequence - batch.FirstSequence + 1, batch.Count),
                batch.Column(TickColumns.Utc), [.. series.Select(one => SummarySeries.Cells(one, batch))], null);
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception))
        {
            return Damaged(stored.Damage(exception));
        }
    }

    private static UnpackedTicks Damaged(string damage) => new(0, 0, [], [], damage);
}
