namespace PileController.Records.Summaries;

/// <summary>
/// Some ticks that follow each other in number and in time, summed up. A row ends where its tier's number of ticks is
/// reached, at the end of a day of ticks, where a tick is missing, and where the clock was set back or something was
/// silent: so a row is never wider in time than its ticks, whatever the clock did, and no clock can make two rows meet.
/// </summary>
/// <param name="firstSequence">Number of its first tick.</param>
/// <param name="firstUtc">Wall time of its first tick, ms.</param>
internal sealed class SummaryRow(long firstSequence, long firstUtc)
{
    // A tick lasts at most 60 s; two ticks further apart than two of those have something missing between them.
    public const long LongestSpacingMilliseconds = 120_000;

    /// <summary>Number of its first tick.</summary>
    public long FirstSequence { get; } = firstSequence;

    /// <summary>Wall time of its first tick, ms: its label, and its least.</summary>
    public long FirstUtc { get; } = firstUtc;

    /// <summary>How many ticks.</summary>
    public long Ticks { get; init; }

    /// <summary>Wall time of its last tick, ms.</summary>
    public long LastUtc { get; init; } = firstUtc;

    /// <summary>One cell a series, in the order of <see cref="SummarySeries"/>.</summary>
    public SummaryCell[] Cells { get; init; } = new SummaryCell[SummarySeries.Count];

    /// <summary>Number of its last tick.</summary>
    public long LastSequence => FirstSequence + Ticks - 1;

    /// <summary>Whether what begins at a tick goes on where this ends.</summary>
    public bool IsContinuedBy(long sequence, long utc) => GoesOn(LastSequence, LastUtc, sequence, utc);

    /// <summary>Whether one tick follows another without anything between them.</summary>
    public static bool GoesOn(long sequence, long utc, long nextSequence, long nextUtc) =>
        nextSequence == sequence + 1 && nextUtc >= utc && nextUtc - utc <= LongestSpacingMilliseconds;

    /// <summary>Rows of a coarser tier, made of rows of a finer one.</summary>
    public static List<SummaryRow> Merge(IReadOnlyList<SummaryRow> finer, Tier to)
    {
        List<SummaryRow> rows = [];
        foreach (SummaryRow row in finer)
        {
            if (rows.Count > 0 && rows[^1].Ticks + row.Ticks <= Tiers.TicksOf(to) && rows[^1].IsContinuedBy(row.FirstSequence, row.FirstUtc))
            {
                rows[^1] = rows[^1].Plus(row);
            }
            else
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    /// <summary>Whether another row tells the same.</summary>
    public bool IsSameAs(SummaryRow other) =>
        (FirstSequence, FirstUtc, Ticks, LastUtc) == (other.FirstSequence, other.FirstUtc, other.Ticks, other.LastUtc)
        && Cells.AsSpan().SequenceEqual(other.Cells);

    private SummaryRow Plus(SummaryRow next)
    {
        SummaryCell[] cells = new SummaryCell[Cells.Length];
        for (int series = 0; series < cells.Length; series++)
        {
            cells[series] = Cells[series].Plus(next.Cells[series]);
        }

        return new SummaryRow(FirstSequence, FirstUtc) { Ticks = Ticks + next.Ticks, LastUtc = next.LastUtc, Cells = cells };
    }
}
