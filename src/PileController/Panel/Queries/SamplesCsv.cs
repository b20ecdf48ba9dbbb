using System.Globalization;
using System.Text;
using PileController.Records;

namespace PileController.Panel.Queries;

/// <summary>Writes series side by side as CSV (RFC 4180): one row a bucket, the mean of each series, empty for a gap.</summary>
internal static class SamplesCsv
{
    /// <summary>The text, with a head line that names series and units.</summary>
    public static string Write(
        IReadOnlyList<(string Name, string Unit, IReadOnlyList<SeriesPoint> Points)> series, Func<long, int> offsetMinutesAt)
    {
        SortedDictionary<long, double?[]> rows = [];
        for (int column = 0; column < series.Count; column++)
        {
            foreach (SeriesPoint point in series[column].Points)
            {
                if (!rows.TryGetValue(point.UtcMilliseconds, out double?[]? row))
                {
                    rows[point.UtcMilliseconds] = row = new double?[series.Count];
                }

                row[column] = point.Mean;
            }
        }

        StringBuilder text = new("localTime,utcMs");
        foreach ((string name, string unit, _) in series)
        {
            text.Append(',').Append(name).Append(unit.Length > 0 ? $" ({unit})" : string.Empty);
        }

        text.Append("\r\n");
        foreach ((long utc, double?[] row) in rows)
        {
            text.Append(LocalTimes.Text(utc, offsetMinutesAt(utc))).Append(',').Append(utc);
            foreach (double? value in row)
            {
                text.Append(',').Append(value?.ToString("0.####", CultureInfo.InvariantCulture));
            }

            text.Append("\r\n");
        }

        return text.ToString();
    }
}
