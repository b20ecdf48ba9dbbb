using PileController.Control.Readings;
using PileController.Records.Checking;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Summaries;

namespace PileController.Benchmarks.Records;

/// <summary>
/// A rig has eighteen channels at most. What a record of 24 would weigh is told by what six thermometers take in one that
/// was written: their columns of ticks and of every tier of rows, packed again by themselves.
/// </summary>
internal static class SixMoreProbes
{
    // Those whose readings move most.
    private static readonly Channel[] Probes =
        [Channel.Supply, Channel.Return, Channel.House, Channel.Tank, Channel.DuctAir, Channel.Outside];

    /// <summary>Their megabytes, 1e6 bytes, in the files of a record.</summary>
    public static double Megabytes(string folder)
    {
        using RecordReader reader = RecordReader.Open(folder);
        long bytes = reader.Batches.Sum(stored => InTicks(stored.Batch()));
        foreach (StoredDay day in reader.Contents.Days(TimeRange.All, problem => throw new IOException(problem)))
        {
            bytes += Tiers.All.Select(day.Rows).OfType<PackedRows>().Sum(InRows);
        }

        return Math.Round(bytes / 1e6, 1);
    }

    private static long InTicks(PackedBatch batch) => Packed(Probes
        .SelectMany(probe => Enumerable.Range(0, TickColumns.PerChannel).Select(part => batch.Column(TickColumns.Of(probe, part)))));

    private static long InRows(PackedRows rows) => Packed(Probes.Select(probe => rows.Cells(SummarySeries.FirstChannel + (int)probe))
        .SelectMany(cells => new Func<SummaryCell, long>[]
        {
            cell => cell.Good, cell => cell.Least, cell => cell.Most - cell.Least, cell => unchecked(cell.Sum - (cell.Good * cell.Least)),
        }.Select(of => cells.Select(of).ToArray())));

    private static long Packed(IEnumerable<long[]> columns)
    {
        ColumnSink sink = new();
        ByteSink whole = new();
        foreach (long[] column in columns)
        {
            sink.Add(column, differences: 1, squeeze: true);
        }

        sink.WriteTo(whole);
        return whole.Length;
    }
}
