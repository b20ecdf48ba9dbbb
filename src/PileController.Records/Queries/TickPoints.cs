using System.Collections;
using PileController.Records.Packing;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>Single ticks as points, in a quarter of the memory: a point is made when it is looked at.</summary>
/// <param name="series">Number of the series.</param>
/// <param name="ticks">When, and how many quanta; <see cref="TickColumns.NoFigure"/> for a gap.</param>
internal sealed class TickPoints(int series, IReadOnlyList<(long Utc, long Quanta)> ticks) : IReadOnlyList<SeriesPoint>
{
    /// <inheritdoc/>
    public int Count => ticks.Count;

    /// <inheritdoc/>
    public SeriesPoint this[int index]
    {
        get
        {
            (long utc, long quanta) = ticks[index];
            double value = SummarySeries.ToUnit(series, quanta);
            return quanta == TickColumns.NoFigure
                ? new SeriesPoint(utc, null, null, null, 0)
                : new SeriesPoint(utc, value, value, value, 1);
        }
    }

    /// <inheritdoc/>
    public IEnumerator<SeriesPoint> GetEnumerator()
    {
        for (int index = 0; index < ticks.Count; index++)
        {
            yield return this[index];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
