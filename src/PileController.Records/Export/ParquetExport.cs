using Parquet;
using Parquet.Schema;

namespace PileController.Records.Export;

/// <summary>
/// Writes what a record was asked for as Parquet: the columns of <see cref="CsvExport"/> by the same names, times as moments
/// in UTC. Rows are written group by group, so that memory does not grow with their number.
/// </summary>
public static class ParquetExport
{
    private const int RowsAGroup = 65_536;

    /// <summary>Writes a series.</summary>
    /// <param name="to">Where to; stays open.</param>
    /// <param name="series">Name of the series; its unit goes into the columns' names.</param>
    /// <param name="points">What <see cref="IPileRecord.SamplesAsync"/> answered.</param>
    /// <param name="cancellation">Ends it early.</param>
    /// <exception cref="ArgumentException">There is no such series.</exception>
    public static Task SamplesAsync(Stream to, string series, IEnumerable<SeriesPoint> points, CancellationToken cancellation)
    {
        RecordSeries found = RecordSeries.Find(series);
        string unit = found.Unit.Length == 0 ? "" : $" [{found.Unit}]";
        return WriteAsync(
            to, points,
            [
                ParquetColumn<SeriesPoint>.Moment("time [UTC]", point => point.UtcMilliseconds),
                ParquetColumn<SeriesPoint>.OrNone($"{found.Name} least{unit}", point => point.Least),
                ParquetColumn<SeriesPoint>.OrNone($"{found.Name} mean{unit}", point => point.Mean),
                ParquetColumn<SeriesPoint>.OrNone($"{found.Name} most{unit}", point => point.Most),
                ParquetColumn<SeriesPoint>.Of("count", point => point.Count),
            ],
            cancellation);
    }

    /// <summary>Writes decision lines in the order given.</summary>
    /// <param name="to">Where to; stays open.</param>
    /// <param name="lines">What <see cref="IPileRecord.DecisionsAsync"/> answered.</param>
    /// <param name="cancellation">Ends it early.</param>
    public static Task DecisionsAsync(Stream to, IEnumerable<DecisionLine> lines, CancellationToken cancellation) => WriteAsync(
        to, lines,
        [
            ParquetColumn<DecisionLine>.Of("sequence", line => line.Sequence),
            ParquetColumn<DecisionLine>.Moment("time [UTC]", line => line.UtcMilliseconds),
            ParquetColumn<DecisionLine>.Text("kinds", line => line.Kinds.ToString()),
            ParquetColumn<DecisionLine>.Text("mode", line => line.Mode.ToString()),
            ParquetColumn<DecisionLine>.Text("curb", line => line.Curb.ToString()),
            ParquetColumn<DecisionLine>.Of("want [W]", line => line.WantWatts),
            ParquetColumn<DecisionLine>.Of("means [W]", line => line.MeansWatts),
            ParquetColumn<DecisionLine>.Of("grant [W]", line => line.GrantWatts),
            ParquetColumn<DecisionLine>.Of("water draw [W]", line => line.WaterWatts),
            ParquetColumn<DecisionLine>.Of("active zone [°C]", line => line.ActiveZoneCelsius),
            ParquetColumn<DecisionLine>.OrNone("house [°C]", line => line.HouseCelsius),
            ParquetColumn<DecisionLine>.Text("why", line => line.Why),
            ParquetColumn<DecisionLine>.Text("note", line => line.Note),
        ],
        cancellation);

    private static async Task WriteAsync<T>(Stream to, IEnumerable<T> rows, ParquetColumn<T>[] columns, CancellationToken cancellation)
    {
        ParquetSchema schema = new(columns.Select(column => column.Field));
        ParquetWriter writer = await ParquetWriter.CreateAsync(schema, to, cancellationToken: cancellation).ConfigureAwait(false);
        await using (writer.ConfigureAwait(false))
        {
            foreach (T[] some in rows.Chunk(RowsAGroup))
            {
                using ParquetRowGroupWriter group = writer.CreateRowGroup();
                foreach (ParquetColumn<T> column in columns)
                {
                    cancellation.ThrowIfCancellationRequested();
                    await column.WriteAsync(group, some).ConfigureAwait(false);
                }

                group.CompleteValidate();
            }
        }
    }
}
