using System.Globalization;
using PileController.Physics.Fluids;

namespace PileController.Physics.Sky.Weather;

/// <summary>
/// Hourly files: columns <c>date</c> (ISO date and time, local standard time unless it carries its own offset) and
/// <c>temperature</c> (°C), and where they are known <c>wind</c> (m/s), <c>pressure</c> (hPa), <c>sun</c> (W/m²) and
/// <c>humidity</c> (fraction), in any order.
/// </summary>
internal static class HourlyWeather
{
    public static WeatherSeries Read(WeatherTable table, Place place, WeatherOptions options, WeatherFaults faults)
    {
        table.Need("date", "temperature");
        List<long> instants = Instants(table, place, faults);
        faults.ThrowIfAny();
        var grid = new HourGrid(instants[0], (int)((instants[^1] - instants[0]) / WeatherSeries.HourMilliseconds) + 1);
        for (int i = 0; i < instants.Count; i++)
        {
            WeatherTable.Row row = table.Rows[i];
            int hour = (int)((instants[i] - instants[0]) / WeatherSeries.HourMilliseconds);
            grid.OutsideC[hour] = table.Number(row, "temperature", -90, 60, "°C");
            grid.WindMPerS[hour] = table.Number(row, "wind", 0, 100, "m/s");
            grid.PressurePa[hour] = 100 * table.Number(row, "pressure", 300, 1100, "hPa");
            grid.SunWPerM2[hour] = table.Number(row, "sun", 0, 1500, "W/m²");
            grid.Humidity[hour] = table.Number(row, "humidity", 0, 1, "(fraction)");
        }

        faults.ThrowIfAny();
        return Finish(grid, place, options, faults);
    }

    /// <summary>Bridges gaps, fills what the file does not have at all, and closes the series.</summary>
    public static WeatherSeries Finish(HourGrid grid, Place place, WeatherOptions options, WeatherFaults faults)
    {
        var bridge = new GapBridge(grid, place, options, faults);
        bridge.Fill(grid.OutsideC, "temperature");
        WeatherOrigin wind = FillOrAssume(bridge, grid.WindMPerS, "wind", options.AssumedWindMPerS);
        WeatherOrigin humidity = FillOrAssume(bridge, grid.Humidity, "humidity", options.AssumedHumidity);
        WeatherOrigin pressure = FillOrAssume(bridge, grid.PressurePa, "pressure", MoistAir.PressureAtAltitudePa(place.AltitudeM));
        bool noSun = Array.TrueForAll(grid.SunWPerM2, double.IsNaN);
        if (!noSun)
        {
            bridge.Fill(grid.SunWPerM2, "sun", followsTheSun: true);
        }

        faults.ThrowIfAny();
        if (noSun)
        {
            SunEstimate.Fill(grid, place, options);
        }

        WeatherOrigin sun = noSun ? WeatherOrigin.Estimated : WeatherOrigin.Measured;
        return new WeatherSeries(grid, new WeatherOrigins(WeatherOrigin.Measured, sun, wind, humidity, pressure), bridge.Gaps);
    }

    private static WeatherOrigin FillOrAssume(GapBridge bridge, double[] values, string quantity, double assumed)
    {
        if (Array.TrueForAll(values, double.IsNaN))
        {
            Array.Fill(values, assumed);
            return WeatherOrigin.Assumed;
        }

        bridge.Fill(values, quantity);
        return WeatherOrigin.Measured;
    }

    private static List<long> Instants(WeatherTable table, Place place, WeatherFaults faults)
    {
        var instants = new List<long>(table.Rows.Count);
        foreach (WeatherTable.Row row in table.Rows)
        {
            string text = table.Text(row, "date");
            if (!TryInstant(text, place.UtcOffset, out long instant))
            {
                faults.Cell(row.Line, "date", text, "a date and time such as 2012-01-31T13:00:00");
            }
            else if (instants.Count > 0 && instant <= instants[^1])
            {
                faults.Cell(row.Line, "date", text, "a time after the line before");
            }
            else if (instants.Count > 0 && (instant - instants[0]) % WeatherSeries.HourMilliseconds != 0)
            {
                faults.Cell(row.Line, "date", text, "a time whole hours after the first");
            }

            instants.Add(instant);
        }

        return instants;
    }

    private static bool TryInstant(string text, TimeSpan utcOffset, out long instant)
    {
        bool read = DateTime.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal, out DateTime time)
            && text.Contains('T', StringComparison.Ordinal);
        // A stamp with an offset of its own comes back as universal time, one without as unspecified.
        instant = !read ? 0 : new DateTimeOffset(time, time.Kind == DateTimeKind.Utc ? TimeSpan.Zero : utcOffset).ToUnixTimeMilliseconds();
        return read;
    }
}
