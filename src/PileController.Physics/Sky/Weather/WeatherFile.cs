namespace PileController.Physics.Sky.Weather;

/// <summary>Reads weather from text. The form is told from the content: EPW, daily extremes or hourly values.</summary>
public static class WeatherFile
{
    /// <summary>Reads a file's text.</summary>
    /// <param name="text">The text, read to its end.</param>
    /// <param name="fileName">Name to put into messages.</param>
    /// <param name="place">Where and in which standard time the days of the file lie; an EPW file's own place goes before it.</param>
    /// <param name="options">What to take where the file is silent; null for the defaults.</param>
    /// <param name="year">Year to put a typical year of an EPW file into; null for its first row's.</param>
    /// <exception cref="WeatherFileException">The file cannot be used; every fault is listed with line, column, value and what is allowed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number of the place or the options is out of range.</exception>
    public static WeatherSeries Read(TextReader text, string fileName, Place place, WeatherOptions? options = null, int? year = null)
    {
        var lines = new List<string>();
        while (text.ReadLine() is { } line)
        {
            lines.Add(line.TrimEnd());
        }

        var faults = new WeatherFaults(fileName);
        WeatherOptions chosen = (options ?? new WeatherOptions()).Checked();
        if (IsEpw(lines))
        {
            return EpwWeather.Read(lines, year, chosen, faults);
        }

        WeatherTable table = WeatherTable.Parse(lines, faults);
        faults.ThrowIfAny();
        return table.Has("temp_max") || table.Has("temp_min")
            ? DailyWeather.Read(table, place.Checked(), chosen, faults)
            : HourlyWeather.Read(table, place.Checked(), chosen, faults);
    }

    // A table may have a column of that name too, but then it has one for the date beside it.
    private static bool IsEpw(List<string> lines) =>
        lines.Count > 0
        && lines[0].StartsWith("LOCATION,", StringComparison.Ordinal)
        && !lines[0].Contains(",date,", StringComparison.OrdinalIgnoreCase);
}
