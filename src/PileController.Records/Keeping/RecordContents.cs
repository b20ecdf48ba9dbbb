using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>Everything a record holds: the store, and what has not reached it yet.</summary>
/// <param name="Store">The store.</param>
/// <param name="Tail">What lies in the tail and in memory.</param>
internal sealed record RecordContents(RecordStore Store, IReadOnlyList<PackedTicks> Tail)
{
    /// <summary>Last tick that has been summed up, or 0.</summary>
    public long LastSummed => Store.Lasting.LastSequence;

    /// <summary>All batches that may touch a stretch of time, oldest first.</summary>
    /// <param name="range">The stretch.</param>
    /// <param name="tellDamage">Told of a file that cannot be opened.</param>
    public IEnumerable<StoredBatch> Batches(TimeRange range, Action<string> tellDamage) =>
        Batches(range, firstSequence: 0, lastSequence: long.MaxValue, tellDamage);

    /// <summary>
    /// The batches that may touch a stretch of time and hold a tick between two numbers, oldest first. Files that lie
    /// outside are not opened. What the store has already is not taken from the tail again.
    /// </summary>
    /// <param name="range">The stretch.</param>
    /// <param name="firstSequence">Number of the first tick.</param>
    /// <param name="lastSequence">Number of the last.</param>
    /// <param name="tellDamage">Told of a file that cannot be opened.</param>
    public IEnumerable<StoredBatch> Batches(TimeRange range, long firstSequence, long lastSequence, Action<string> tellDamage)
    {
        foreach (StoredBatch stored in Stored(range, firstSequence, lastSequence, tellDamage))
        {
            yield return stored;
        }

        long last = Store.Ticks.LastSequence;
        foreach (PackedTicks pack in Tail.Where(
            pack => pack.Batch.FirstSequence > last && IsBetween(pack.Batch.Head, firstSequence, lastSequence) && range.Touches(pack.Batch.Head)))
        {
            yield return StoredBatch.Of(pack);
        }
    }

    /// <summary>All batches of the store that hold a tick after a number, oldest first.</summary>
    /// <param name="sequence">The number.</param>
    /// <param name="tellDamage">Told of a file that cannot be opened.</param>
    public IEnumerable<StoredBatch> StoredAfter(long sequence, Action<string> tellDamage) =>
        Stored(TimeRange.All, sequence + 1, long.MaxValue, tellDamage);

    /// <summary>All days that have been summed up and may touch a stretch of time, oldest first.</summary>
    /// <param name="range">The stretch.</param>
    /// <param name="tellDamage">Told of a file that cannot be opened.</param>
    public IEnumerable<StoredDay> Days(TimeRange range, Action<string> tellDamage)
    {
        foreach (RecordFile file in Store.Lasting.Files.Where(file => range.Touches(file.Span)))
        {
            foreach (BatchHead head in HeadsOf(file, afterSequence: 0, tellDamage).Where(range.Touches))
            {
                yield return new StoredDay(head, file, Store.Minutes.Files.FirstOrDefault(
                    minutes => minutes.Span.FirstSequence <= head.FirstSequence && minutes.LastSequence >= head.FirstSequence));
            }
        }
    }

    private IEnumerable<StoredBatch> Stored(TimeRange range, long firstSequence, long lastSequence, Action<string> tellDamage) =>
        from file in Store.Ticks.Files
        where file.LastSequence >= firstSequence && file.Span.FirstSequence <= lastSequence && range.Touches(file.Span)
        from head in HeadsOf(file, Math.Max(firstSequence - 1, 0), tellDamage)
        where IsBetween(head, firstSequence, lastSequence) && range.Touches(head)
        select StoredBatch.Of(file, head);

    private static bool IsBetween(BatchHead head, long firstSequence, long lastSequence) =>
        head.LastSequence >= firstSequence && head.FirstSequence <= lastSequence;

    // A copy: a file that proves damaged while it is read is opened anew, and its heads with it.
    private static IReadOnlyList<BatchHead> HeadsOf(RecordFile file, long afterSequence, Action<string> tellDamage)
    {
        try
        {
            return [.. file.HeadsAfter(afterSequence)];
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is IOException)
        {
            tellDamage($"'{file.Name}' cannot be opened: {exception.Message}");
            return [];
        }
    }
}
