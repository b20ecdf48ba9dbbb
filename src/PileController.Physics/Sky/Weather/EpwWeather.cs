using System.Globalization;

namespace PileController.Physics.Sky.Weather;

/// <summary>
/// EPW files: eight header lines, then a row an hour whose stamp is the hour's end. A typical year is stitched of months from
/// several; all are put into one year here. The sun's hourly means are carried to the hours themselves by averaging neighbours,
/// which keeps their sum.
/// </summary>
internal static class EpwWeather
{
    private const int HeaderLines = 8;
    private const int FewestCells = 22;

    /// <summary>Place in the LOCATION line.</summary>
    public static Place PlaceOf(string locationLine, WeatherFaults faults)
    {
        string[] cells = WeatherTable.Cells(locationLine);
        double Cell(int index, string name, double lowest, double highest, string unit)
        {
            string text = index < cells.Length ? cells[index] : "";
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= lowest && value <= highest)
            {
                return value;
            }

            faults.Cell(1, name, text, $"{lowest} to {highest} {unit}");
            return 0;
        }

        var place = new Place(
            Cell(6, "latitude", -90, 90, "degrees"),
            Cell(7, "longitude", -180, 180, "degrees"),
            TimeSpan.FromHours(Cell(8, "time zone", -14, 14, "h")),
            Cell(9, "elevation", -500, 11_000, "m"));
        faults.ThrowIfAny();
        return place;
    }

    public static WeatherSeries Read(IReadOnlyList<string> lines, int? year, WeatherOptions options, WeatherFaults faults)
    {
        Place place = PlaceOf(lines[0], faults);
        List<EpwRow> rows = Rows(lines, year, place, faults);
        faults.ThrowIfAny();
        var grid = new HourGrid(rows[0].Instant, (int)((rows[^1].Instant - rows[0].Instant) / WeatherSeries.HourMilliseconds) + 1);
        double[] sunBefore = new double[grid.OutsideC.Length + 1];
        Array.Fill(sunBefore, double.NaN);
        foreach (EpwRow row in rows)
        {
            int hour = (int)((row.Instant - rows[0].Instant) / WeatherSeries.HourMilliseconds);
            (grid.OutsideC[hour], grid.Humidity[hour], grid.PressurePa[hour], grid.WindMPerS[hour]) = (row.OutsideC, row.Humidity, row.PressurePa, row.WindMPerS);
            sunBefore[hour] = row.SunWPerM2;
        }

        sunBefore[^1] = sunBefore[^2];
        for (int hour = 0; hour < grid.SunWPerM2.Length; hour++)
        {
            grid.SunWPerM2[hour] = 0.5 * (sunBefore[hour] + sunBefore[hour + 1]);
        }

        return HourlyWeather.Finish(grid, place, options, faults);
    }

    private static List<EpwRow> Rows(IReadOnlyList<string> lines, int? year, Place place, WeatherFaults faults)
    {
        var rows = new List<EpwRow>();
        for (int i = HeaderLines; i < lines.Count; i++)
        {
            if (lines[i].Length == 0)
            {
                continue;
            }

            string[] cells = WeatherTable.Cells(lines[i]);
            if (cells.Length < FewestCells)
            {
                faults.Cell(i + 1, "row", lines[i], $"{FewestCells} cells or more");
                continue;
            }

            year ??= int.TryParse(cells[0], out int first) ? first : null;
            EpwRow row = EpwRow.Parse(cells, i + 1, year ?? 0, place.UtcOffset, faults);
            if (rows.Count > 0 && row.Instant <= rows[^1].Instant)
            {
                faults.Cell(i + 1, "date", string.Join('-', cells.Take(4)), "an hour after the line before");
            }

            rows.Add(row);
        }

        if (rows.Count == 0)
        {
            faults.File("no rows; allowed is one row or more after the header.");
        }

        return rows;
    }
}
