using System.Globalization;
using PileController.Physics.Fluids;

namespace PileController.Physics.Sky.Weather;

/// <summary>
/// Daily files: columns <c>date</c> (local days in standard time), <c>temp_max</c> and <c>temp_min</c> (°C), and where they are
/// known <c>wind</c> (mean, m/s) and <c>location</c>, in any order.
/// </summary>
internal static class DailyWeather
{
    private const int Day = 24;

    public static WeatherSeries Read(WeatherTable table, Place place, WeatherOptions options, WeatherFaults faults)
    {
        table.Need("date", "temp_max", "temp_min");
        List<DateOnly> dates = Dates(table, faults);
        faults.ThrowIfAny();
        int days = dates[^1].DayNumber - dates[0].DayNumber + 1;
        double[] lowest = Empty(days), highest = Empty(days), wind = Empty(days);
        for (int i = 0; i < dates.Count; i++)
        {
            WeatherTable.Row row = table.Rows[i];
            int day = dates[i].DayNumber - dates[0].DayNumber;
            highest[day] = table.Number(row, "temp_max", -90, 60, "°C");
            lowest[day] = table.Number(row, "temp_min", -90, 60, "°C");
            wind[day] = table.Number(row, "wind", 0, 100, "m/s");
            if (lowest[day] > highest[day])
            {
                faults.Cell(row.Line, "temp_min", table.Text(row, "temp_min"), $"at most temp_max ({highest[day]} °C)");
            }
        }

        faults.ThrowIfAny();
        bool noWind = Array.TrueForAll(wind, double.IsNaN);
        var bridge = new DayBridge(dates[0], place, options, faults);
        bridge.Fill(highest, "highest temperature");
        bridge.Fill(lowest, "lowest temperature");
        if (noWind)
        {
            Array.Fill(wind, options.AssumedWindMPerS);
        }
        else
        {
            bridge.Fill(wind, "wind");
        }

        faults.ThrowIfAny();
        var grid = new HourGrid(Sun.UtcMilliseconds(dates[0]) - (long)place.UtcOffset.TotalMilliseconds, (days * Day) + 1);
        var curve = new DayCurve(dates[0], lowest, highest, place);
        for (int hour = 0; hour < grid.OutsideC.Length; hour++)
        {
            grid.OutsideC[hour] = curve.At(grid.Instant(hour));
            grid.WindMPerS[hour] = wind[Math.Min(hour / Day, days - 1)];
        }

        Array.Fill(grid.Humidity, options.AssumedHumidity);
        Array.Fill(grid.PressurePa, MoistAir.PressureAtAltitudePa(place.AltitudeM));
        SunEstimate.FillFromSpans(grid, place, options, lowest, highest);
        var origins = new WeatherOrigins(
            WeatherOrigin.SpreadFromDaily,
            WeatherOrigin.Estimated,
            noWind ? WeatherOrigin.Assumed : WeatherOrigin.SpreadFromDaily,
            WeatherOrigin.Assumed,
            WeatherOrigin.Assumed);
        return new WeatherSeries(grid, origins, bridge.Gaps);
    }

    private static double[] Empty(int days)
    {
        double[] values = new double[days];
        Array.Fill(values, double.NaN);
        return values;
    }

    private static List<DateOnly> Dates(WeatherTable table, WeatherFaults faults)
    {
        var dates = new List<DateOnly>(table.Rows.Count);
        string? place = null;
        foreach (WeatherTable.Row row in table.Rows)
        {
            string text = table.Text(row, "date");
            if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date))
            {
                faults.Cell(row.Line, "date", text, "a date such as 2012-01-31");
            }
            else if (dates.Count > 0 && date <= dates[^1])
            {
                faults.Cell(row.Line, "date", text, "a date after the line before");
            }

            string location = table.Has("location") ? table.Text(row, "location") : "";
            place ??= location;
            if (location != place)
            {
                faults.Cell(row.Line, "location", location, $"one place a file, here \"{place}\"");
            }

            dates.Add(date);
        }

        return dates;
    }
}
