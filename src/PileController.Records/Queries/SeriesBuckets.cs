using PileController.Records.Packing;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>
/// Gathers values and summaries into buckets of wall time, or keeps every one, and shows gaps as gaps. All sums are of
/// whole quanta and exact, so it does not matter how ticks were summed up before.
/// </summary>
/// <param name="series">Number of the series.</param>
/// <param name="stepMilliseconds">Width of a bucket, ms; 0 to keep every value.</param>
internal sealed class SeriesBuckets(int series, long stepMilliseconds)
{
    private readonly List<(long Utc, long Quanta)> _ticks = [];
    private readonly List<Bucket> _buckets = [];
    private readonly Dictionary<long, int> _places = [];

    /// <summary>Adds those ticks of some batches that lie in a stretch of time.</summary>
    /// <param name="batches">The batches.</param>
    /// <param name="at">Which of their series this is.</param>
    /// <param name="range">The stretch.</param>
    public void Add(IReadOnlyList<UnpackedTicks> batches, int at, TimeRange range)
    {
        if (stepMilliseconds == 0)
        {
            _ticks.EnsureCapacity(_ticks.Count + batches.Sum(batch => batch.To - batch.From));
        }

        foreach (UnpackedTicks batch in batches)
        {
            long[] cells = batch.Cells[at];
            for (int row = batch.From; row < batch.To; row++)
            {
                if (range.Holds(batch.Utc[row]))
                {
                    Add(batch.Utc[row], cells[row]);
                }
            }
        }
    }

    // TickColumns.NoFigure is a tick without a believable value.
    private void Add(long utcMilliseconds, long quanta)
    {
        if (stepMilliseconds == 0)
        {
            _ticks.Add((utcMilliseconds, quanta));
        }
        else
        {
            Add(utcMilliseconds, utcMilliseconds, utcMilliseconds, default(SummaryCell).With(quanta));
        }
    }

    /// <summary>Adds a row of ticks; it goes into the bucket that holds its middle.</summary>
    public void Add(long firstUtc, long lastUtc, SummaryCell cell) =>
        Add(stepMilliseconds == 0 ? firstUtc : firstUtc + ((lastUtc - firstUtc) / 2), firstUtc, lastUtc, cell);

    /// <summary>The points, oldest first, with one empty point in each gap.</summary>
    public IReadOnlyList<SeriesPoint> Points()
    {
        if (_buckets.Count == 0)
        {
            return PointsOfTicks();
        }

        _buckets.AddRange(_ticks.Select(tick => new Bucket(tick.Utc, tick.Utc, tick.Utc)
            .With(tick.Utc, tick.Utc, default(SummaryCell).With(tick.Quanta))));
        return BucketPoints();
    }

    // Most of what is asked for without buckets is ticks alone, and many of them.
    private TickPoints PointsOfTicks()
    {
        List<(long Utc, long Quanta)> ticks = InOrder(_ticks, tick => tick.Utc);
        return new TickPoints(series, HasGap(ticks) ? WithGaps(ticks) : ticks);
    }

    private static bool HasGap(List<(long Utc, long Quanta)> ticks)
    {
        for (int at = 1; at < ticks.Count; at++)
        {
            if (IsGap(ticks[at - 1].Utc, ticks[at].Utc))
            {
                return true;
            }
        }

        return false;
    }

    private static List<(long Utc, long Quanta)> WithGaps(List<(long Utc, long Quanta)> ticks)
    {
        List<(long Utc, long Quanta)> all = [ticks[0]];
        foreach ((long utc, long quanta) in ticks.Skip(1))
        {
            if (IsGap(all[^1].Utc, utc))
            {
                all.Add((all[^1].Utc + 1, TickColumns.NoFigure));
            }

            all.Add((utc, quanta));
        }

        return all;
    }

    private static bool IsGap(long utc, long nextUtc) => nextUtc - utc > SummaryRow.LongestSpacingMilliseconds;

    private List<SeriesPoint> BucketPoints()
    {
        long spacing = stepMilliseconds == 0 ? SummaryRow.LongestSpacingMilliseconds : stepMilliseconds;
        List<SeriesPoint> points = new(_buckets.Count);
        long covered = long.MaxValue;
        foreach (Bucket bucket in InOrder(_buckets, bucket => bucket.Start))
        {
            // A row wider than its bucket covers those beside it.
            if (points.Count > 0 && Math.Min(bucket.Start, BucketOf(bucket.First)) - covered > spacing)
            {
                points.Add(new SeriesPoint(covered + Math.Max(stepMilliseconds, 1), null, null, null, 0));
            }

            points.Add(PointOf(bucket));
            covered = Math.Max(bucket.Start, BucketOf(bucket.Last));
        }

        return points;
    }

    private void Add(long place, long firstUtc, long lastUtc, SummaryCell cell)
    {
        if (stepMilliseconds == 0)
        {
            _buckets.Add(new Bucket(place, firstUtc, lastUtc).With(firstUtc, lastUtc, cell));
            return;
        }

        long start = BucketOf(place);
        int at = _buckets.Count - 1;
        if (at < 0 || _buckets[at].Start != start)
        {
            // A clock that was set back comes to a bucket that is there already.
            if (!_places.TryGetValue(start, out at))
            {
                at = _buckets.Count;
                _places.Add(start, at);
                _buckets.Add(new Bucket(start, firstUtc, lastUtc));
            }
        }

        _buckets[at] = _buckets[at].With(firstUtc, lastUtc, cell);
    }

    private long BucketOf(long utc) =>
        stepMilliseconds == 0 ? utc : utc - (((utc % stepMilliseconds) + stepMilliseconds) % stepMilliseconds);

    // Only a clock that was set back puts them out of order.
    private static List<T> InOrder<T>(List<T> all, Func<T, long> moment)
    {
        for (int i = 1; i < all.Count; i++)
        {
            if (moment(all[i]) < moment(all[i - 1]))
            {
                return [.. all.OrderBy(moment)];
            }
        }

        return all;
    }

    private SeriesPoint PointOf(Bucket bucket) => bucket.Good == 0
        ? new SeriesPoint(bucket.Start, null, null, null, 0)
        : new SeriesPoint(
            bucket.Start, SummarySeries.ToUnit(series, bucket.Least),
            SummarySeries.ToUnit(series, (double)bucket.Sum / bucket.Good), SummarySeries.ToUnit(series, bucket.Most),
            (int)Math.Min(bucket.Good, int.MaxValue));

    private readonly record struct Bucket(
        long Start, long First, long Last, long Good = 0, long Least = 0, long Most = 0, Int128 Sum = default)
    {
        public Bucket With(long firstUtc, long lastUtc, SummaryCell cell)
        {
            long first = Math.Min(First, firstUtc);
            long last = Math.Max(Last, lastUtc);
            if (cell.Good == 0)
            {
                return this with { First = first, Last = last };
            }

            return Good == 0
                ? new Bucket(Start, first, last, cell.Good, cell.Least, cell.Most, cell.Sum)
                : new Bucket(
                    Start, first, last, Good + cell.Good, Math.Min(Least, cell.Least), Math.Max(Most, cell.Most), Sum + cell.Sum);
        }
    }
}
