namespace PileController.Records.Queries;

/// <summary>Gathers values into buckets of wall time, or keeps every one, and shows gaps as gaps.</summary>
internal sealed class SeriesBuckets(long stepMilliseconds)
{
    // A tick lasts at most 60 s; two ticks further apart than two of those have something missing between them.
    private const long LongestSpacingMilliseconds = 120_000;
    private readonly List<Bucket> _buckets = [];
    private readonly Dictionary<long, int> _places = [];

    /// <summary>Adds one value; NaN is a tick without a believable one.</summary>
    public void Add(long utcMilliseconds, double value)
    {
        if (stepMilliseconds == 0)
        {
            _buckets.Add(new Bucket(utcMilliseconds).With(value));
            return;
        }

        long start = utcMilliseconds - Remainder(utcMilliseconds);
        int place = _buckets.Count - 1;
        if (place < 0 || _buckets[place].Start != start)
        {
            // A clock that was set back comes to a bucket that is there already.
            if (!_places.TryGetValue(start, out place))
            {
                place = _buckets.Count;
                _places.Add(start, place);
                _buckets.Add(new Bucket(start));
            }
        }

        _buckets[place] = _buckets[place].With(value);
    }

    /// <summary>The points, oldest first, with one empty point in each gap.</summary>
    public IReadOnlyList<SeriesPoint> Points()
    {
        long spacing = stepMilliseconds == 0 ? LongestSpacingMilliseconds : stepMilliseconds;
        List<SeriesPoint> points = new(_buckets.Count);
        foreach (Bucket bucket in InOrder())
        {
            if (points.Count > 0 && bucket.Start - points[^1].UtcMilliseconds > spacing)
            {
                points.Add(new SeriesPoint(points[^1].UtcMilliseconds + Math.Max(stepMilliseconds, 1), null, null, null, 0));
            }

            points.Add(bucket.ToPoint());
        }

        return points;
    }

    private long Remainder(long utc) => ((utc % stepMilliseconds) + stepMilliseconds) % stepMilliseconds;

    private IEnumerable<Bucket> InOrder()
    {
        for (int i = 1; i < _buckets.Count; i++)
        {
            if (_buckets[i].Start < _buckets[i - 1].Start)
            {
                return _buckets.OrderBy(bucket => bucket.Start);
            }
        }

        return _buckets;
    }

    private readonly record struct Bucket(long Start, double Least = 0, double Sum = 0, double Most = 0, int Count = 0)
    {
        public Bucket With(double value)
        {
            if (double.IsNaN(value))
            {
                return this;
            }

            return Count == 0
                ? new Bucket(Start, value, value, value, 1)
                : new Bucket(Start, Math.Min(Least, value), Sum + value, Math.Max(Most, value), Count + 1);
        }

        public SeriesPoint ToPoint() => Count == 0
            ? new SeriesPoint(Start, null, null, null, 0)
            : new SeriesPoint(Start, Least, Sum / Count, Most, Count);
    }
}
