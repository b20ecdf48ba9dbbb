using PileController.Records.Packing;

namespace PileController.Records.Summaries;

/// <summary>
/// Rows of one tier over one day of ticks, packed: version, how many series and rows, the columns with their directory,
/// a CRC-32. Each series can be unpacked without the others.
/// </summary>
/// <threadsafety>Immutable: safe from any thread.</threadsafety>
internal sealed class PackedRows
{
    private const byte Version = 1;
    private const int MostRows = 100_000;
    private const int MostSeries = 1000;

    // The columns: four labels, then four a series.
    private const int FirstSequence = 0;
    private const int Ticks = 1;
    private const int FirstUtc = 2;
    private const int Width = 3;
    private const int FirstSeries = 4;
    private const int PerSeries = 4;
    private const int Good = 0;
    private const int Least = 1;
    private const int Range = 2;
    private const int Rest = 3;
    private readonly ColumnIndex _columns;
    private readonly int _series;

    private PackedRows(byte[] bytes, int series, int count, ColumnIndex columns)
    {
        Bytes = bytes;
        _series = series;
        Count = count;
        _columns = columns;
    }

    /// <summary>The sealed bytes.</summary>
    public byte[] Bytes { get; }

    /// <summary>How many rows.</summary>
    public int Count { get; }

    /// <summary>Packs rows.</summary>
    public static PackedRows Of(IReadOnlyList<SummaryRow> rows)
    {
        ColumnSink columns = new();
        long[] cells = new long[rows.Count];
        Add(2, row => row.FirstSequence);
        Add(1, row => row.Ticks);
        Add(2, row => row.FirstUtc);
        Add(1, row => row.LastUtc - row.FirstUtc);
        for (int series = 0; series < SummarySeries.Count; series++)
        {
            int one = series;
            Add(1, row => row.Cells[one].Good);
            Add(1, row => row.Cells[one].Least);
            Add(1, row => row.Cells[one].Most - row.Cells[one].Least);

            // What the mean lies above the least is a small number; the sum is not. Whatever wraps round comes back.
            Add(1, row => unchecked(row.Cells[one].Sum - (row.Cells[one].Good * row.Cells[one].Least)));
        }

        ByteSink whole = new();
        whole.Bytes([Version]);
        whole.Number(SummarySeries.Count);
        whole.Number((ulong)rows.Count);
        columns.WriteTo(whole);
        return Parse(whole.Seal());

        void Add(int differences, Func<SummaryRow, long> of)
        {
            for (int row = 0; row < cells.Length; row++)
            {
                cells[row] = of(rows[row]);
            }

            columns.Add(cells, differences, squeeze: true);
        }
    }

    /// <summary>Checks the seal and reads the directory.</summary>
    /// <exception cref="InvalidDataException">Damaged, or of a version this build does not know.</exception>
    public static PackedRows Parse(byte[] bytes)
    {
        ReadOnlySpan<byte> body = ByteSink.Unseal(bytes, "A summary");
        if (body.IsEmpty || body[0] != Version)
        {
            throw new InvalidDataException("A summary has a version this build does not know.");
        }

        int at = 1;
        ulong series = Varint.Read(body, ref at);
        ulong count = Varint.Read(body, ref at);
        if (count > MostRows || series > MostSeries)
        {
            throw new InvalidDataException($"A summary claims {count} rows of {series} series; at most {MostRows} of {MostSeries} are allowed.");
        }

        ColumnIndex columns = ColumnIndex.Read(bytes, body, at, FirstSeries + (PerSeries * (int)series));
        return new PackedRows(bytes, (int)series, (int)count, columns);
    }

    /// <summary>When each row begins and ends, wall time in ms.</summary>
    public (long[] First, long[] Last) Times()
    {
        long[] first = Column(FirstUtc, 2);
        long[] last = Column(Width, 1);
        for (int row = 0; row < last.Length; row++)
        {
            last[row] += first[row];
        }

        return (first, last);
    }

    /// <summary>One series, a cell a row. A series that was not known when this was made has no good ticks.</summary>
    public SummaryCell[] Cells(int series)
    {
        SummaryCell[] cells = new SummaryCell[Count];
        if (series >= _series)
        {
            return cells;
        }

        int column = FirstSeries + (series * PerSeries);
        long[] good = Column(column + Good, 1);
        long[] least = Column(column + Least, 1);
        long[] range = Column(column + Range, 1);
        long[] rest = Column(column + Rest, 1);
        for (int row = 0; row < cells.Length; row++)
        {
            cells[row] = unchecked(new SummaryCell(
                good[row], least[row], least[row] + range[row], rest[row] + (good[row] * least[row])));
        }

        return cells;
    }

    /// <summary>All rows, whole.</summary>
    public List<SummaryRow> Rows()
    {
        long[] sequence = Column(FirstSequence, 2);
        long[] ticks = Column(Ticks, 1);
        (long[] first, long[] last) = Times();
        List<SummaryRow> rows = new(Count);
        for (int row = 0; row < Count; row++)
        {
            rows.Add(new SummaryRow(sequence[row], first[row]) { Ticks = ticks[row], LastUtc = last[row] });
        }

        for (int series = 0; series < SummarySeries.Count; series++)
        {
            SummaryCell[] cells = Cells(series);
            for (int row = 0; row < Count; row++)
            {
                rows[row].Cells[series] = cells[row];
            }
        }

        return rows;
    }

    private long[] Column(int column, int differences)
    {
        long[] cells = new long[Count];
        _columns.Unpack(column, differences, cells);
        return cells;
    }
}
