using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>What questions have read lately.</summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class QueryCache
{
    // A week of ticks, and a year of hours with a week of minutes; packed, and as much again for columns in use.
    private const long MostBytesOfTicks = 2_000_000;
    private const long MostBytesOfRows = 4_000_000;

    // More than a year of each.
    private const long MostBytesOfLines = 2_000_000;
    private const long MostBytesOfTexts = 4_000_000;

    // What it takes to keep a day beside what it holds: an entry, two objects.
    private const int BytesADay = 200;
    private readonly Recent<BatchHead, PackedBatch> _ticks = new(MostBytesOfTicks);
    private readonly Recent<(BatchHead, Tier), PackedRows?> _rows = new(MostBytesOfRows);
    private readonly NewestDays<PackedLines?> _lines = new(MostBytesOfLines);
    private readonly NewestDays<string> _texts = new(MostBytesOfTexts);

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

    /// <summary>Those lines of a day that are asked for, oldest first. Whether there can be any is told by what is kept in memory.</summary>
    /// <exception cref="InvalidDataException">They do not match their checksum.</exception>
    public IReadOnlyList<DecisionLine> Lines(StoredDay day, DecisionAsk ask) =>
        day.Marks.MayHold(ask) && (ask.Text is not { } text || Texts(day).Contains(text, StringComparison.OrdinalIgnoreCase))
            ? Lines(day)?.Matching(ask) ?? []
            : [];

    private string Texts(StoredDay day) => _texts.Open(day.Head, () =>
    {
        string texts = Lines(day)?.Texts() ?? "";
        return (texts, BytesADay + (sizeof(char) * texts.Length));
    });

    private PackedLines? Lines(StoredDay day) => _lines.Open(day.Head, () =>
    {
        PackedLines? lines = day.PackedLines();
        return (lines, BytesADay + (lines?.Bytes.Length ?? 0));
    });
}
