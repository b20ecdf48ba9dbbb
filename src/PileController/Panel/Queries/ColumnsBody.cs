using PileController.Records;

namespace PileController.Panel.Queries;

/// <summary>One series by columns: a value of each for a moment, null in a gap.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="UtcMs">The moments; null where they are those of the series before.</param>
/// <param name="Least">The least value from a moment on.</param>
/// <param name="Mean">The mean.</param>
/// <param name="Most">The most.</param>
internal sealed record ColumnBody(string Name, string Unit, long[]? UtcMs, double?[] Least, double?[] Mean, double?[] Most);

/// <summary>
/// The answer to a question for samples, by columns: half as long as by points, since a moment is told once for all
/// series, and read and written in a fraction of the time.
/// </summary>
internal sealed record ColumnsBody(long FromUtcMs, long ToUtcMs, double StepSeconds, IReadOnlyList<ColumnBody> Series)
{
    /// <summary>Puts series into columns.</summary>
    /// <param name="start">From, ms UTC.</param>
    /// <param name="end">To, ms UTC.</param>
    /// <param name="width">What a point stands for, ms.</param>
    /// <param name="found">The series.</param>
    /// <param name="places">Decimal places at most; null for all.</param>
    public static ColumnsBody Of(
        long start, long end, long width, IReadOnlyList<(string Name, string Unit, IReadOnlyList<SeriesPoint> Points)> found, int? places)
    {
        List<ColumnBody> series = new(found.Count);
        long[] told = [];
        foreach ((string name, string unit, IReadOnlyList<SeriesPoint> points) in found)
        {
            long[] moments = new long[points.Count];
            double?[] least = new double?[points.Count];
            double?[] mean = new double?[points.Count];
            double?[] most = new double?[points.Count];
            for (int at = 0; at < points.Count; at++)
            {
                SeriesPoint point = points[at];
                moments[at] = point.UtcMilliseconds;
                least[at] = Rounded(point.Least, places);
                mean[at] = Rounded(point.Mean, places);
                most[at] = Rounded(point.Most, places);
            }

            bool same = series.Count > 0 && moments.AsSpan().SequenceEqual(told);
            series.Add(new ColumnBody(name, unit, same ? null : moments, least, mean, most));
            told = moments;
        }

        return new ColumnsBody(start, end, width / 1000.0, series);
    }

    /// <summary>A value with so many decimal places at most.</summary>
    public static double? Rounded(double? value, int? places) => value is { } number && places is { } digits ? Math.Round(number, digits) : value;
}
