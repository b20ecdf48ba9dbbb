using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>What questions for series have read lately.</summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class QueryCache
{
    // A week of ticks, and a year of hours with a week of minutes; packed, and as much again for columns in use.
    private const long MostBytesOfTicks = 2_000_000;
    private const long MostBytesOfRows = 4_000_000;
    private readonly Recent<BatchHead, PackedBatch> _ticks = new(MostBytesOfTicks);
    private readonly Recent<(BatchHead, Tier), PackedRows?> _rows = new(MostBytesOfRows);

    /// <summary>The ticks of a stored batch.</summary>
    /// <exception cref="InvalidDataException">It is damaged.</exception>
    public PackedBatch Ticks(StoredBatch stored) => _ticks.Open(stored.Head, () =>
    {
        PackedBatch batch = stored.Batch();
        return (batch, batch.Bytes.Length);
    });

    /// <summary>The rows of a tier of a day; null when they are no longer kept.</summary>
    /// <exception cref="InvalidDataException">They are damaged.</exception>
    public PackedRows? Rows(StoredDay day, Tier tier) => _rows.Open((day.Head, tier), () =>
    {
        PackedRows? rows = day.Rows(tier);
        return (rows, rows?.Bytes.Length ?? 0);
    });
}
