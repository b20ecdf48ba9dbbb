using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Queries;
using PileController.Records.Summaries;

namespace PileController.Records.Tests.Summaries;

/// <summary>Sums up ticks the plain way, from the decisions themselves.</summary>
internal static class PlainSums
{
    /// <summary>Rows of at most <paramref name="most"/> ticks, cut where the ticks do not follow each other.</summary>
    public static List<SummaryRow> Rows(IReadOnlyList<TickEntry> ticks, int most)
    {
        List<SummaryRow> rows = [];
        List<Decision> open = [];
        foreach (Decision next in ticks.Select(tick => tick.Decision))
        {
            long pause = open.Count == 0 ? 0 : next.At.UtcMilliseconds - open[^1].At.UtcMilliseconds;
            if (open.Count == most || (open.Count > 0 && (pause is < 0 or > 120_000 || next.Sequence != open[^1].Sequence + 1)))
            {
                rows.Add(RowOf(open));
                open.Clear();
            }

            open.Add(next);
        }

        return open.Count == 0 ? rows : [.. rows, RowOf(open)];
    }

    /// <summary>A series' quanta at one tick, or null.</summary>
    public static long? Cell(Decision decision, int series)
    {
        if (series == SummarySeries.Mode)
        {
            return (long)decision.Mode;
        }

        if (series < SummarySeries.FirstChannel)
        {
            DecisionFigure figure = DecisionSeries.All[series - SummarySeries.FirstFigure];
            return (long)Math.Round(figure.Of(decision) * figure.PerUnit, MidpointRounding.AwayFromZero);
        }

        Reading reading = decision.Readings[(Channel)(series - SummarySeries.FirstChannel)];
        return reading.IsGood ? reading.Quanta : null;
    }

    private static SummaryRow RowOf(List<Decision> ticks)
    {
        SummaryCell[] cells = new SummaryCell[SummarySeries.Count];
        for (int series = 0; series < cells.Length; series++)
        {
            long[] good = [.. ticks.Select(tick => Cell(tick, series)).OfType<long>()];
            cells[series] = good.Length == 0 ? default : new SummaryCell(good.Length, good.Min(), good.Max(), good.Sum());
        }

        return new SummaryRow(ticks[0].Sequence, ticks[0].At.UtcMilliseconds)
        {
            Ticks = ticks.Count,
            LastUtc = ticks[^1].At.UtcMilliseconds,
            Cells = cells,
        };
    }
}
