using PileController.Records.Packing;

namespace PileController.Records.Summaries;

/// <summary>Sums up ticks into rows of the finest tier.</summary>
/// <threadsafety>One thread at a time.</threadsafety>
internal sealed class MinuteRows
{
    private readonly List<SummaryRow> _rows = [];

    /// <summary>The rows so far.</summary>
    public IReadOnlyList<SummaryRow> All => _rows;

    /// <summary>Adds ticks of a batch, after those added before.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="from">First row of it.</param>
    /// <param name="to">Row after the last.</param>
    public void Add(PackedBatch batch, int from, int to)
    {
        List<Piece> pieces = Cut(batch, from, to);
        for (int series = 0; series < SummarySeries.Count; series++)
        {
            long[] cells = SummarySeries.Cells(series, batch);
            foreach (Piece piece in pieces)
            {
                SummaryCell sum = _rows[piece.Row].Cells[series];
                for (int row = piece.From; row < piece.To; row++)
                {
                    sum = sum.With(cells[row]);
                }

                _rows[piece.Row].Cells[series] = sum;
            }
        }
    }

    // A row that a batch before has left open goes on in this one.
    private List<Piece> Cut(PackedBatch batch, int from, int to)
    {
        long[] utc = batch.Column(TickColumns.Utc);
        List<Piece> pieces = [];
        int at = from;
        while (at < to)
        {
            long sequence = batch.FirstSequence + at;
            if (_rows.Count == 0 || _rows[^1].Ticks == Tiers.TicksOf(Tier.Minute) || !_rows[^1].IsContinuedBy(sequence, utc[at]))
            {
                _rows.Add(new SummaryRow(sequence, utc[at]) { Ticks = 0 });
            }

            SummaryRow open = _rows[^1];
            int end = at + 1;
            int most = Math.Min(to, at + Tiers.TicksOf(Tier.Minute) - (int)open.Ticks);
            while (end < most && SummaryRow.GoesOn(batch.FirstSequence + end - 1, utc[end - 1], batch.FirstSequence + end, utc[end]))
            {
                end++;
            }

            _rows[^1] = new SummaryRow(open.FirstSequence, open.FirstUtc)
            {
                Ticks = open.Ticks + end - at,
                LastUtc = utc[end - 1],
                Cells = open.Cells,
            };
            pieces.Add(new Piece(_rows.Count - 1, at, end));
            at = end;
        }

        return pieces;
    }

    private readonly record struct Piece(int Row, int From, int To);
}
