using PileController.Physics.Sky.Weather;

namespace PileController.Plans.Ahead;

/// <summary>Finds the winters that a weather file covers from their first to their last hour.</summary>
internal static class WinterFinding
{
    private const long DayMilliseconds = 86_400_000;

    /// <summary>Every winter of a series that begins on a day of the year and is wholly covered.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="weather">The series.</param>
    /// <param name="month">Month in which winters begin.</param>
    /// <param name="day">Day on which they begin.</param>
    /// <param name="days">How long they are.</param>
    /// <param name="offsetMinutes">Local standard time minus UTC, minutes.</param>
    public static IReadOnlyList<AheadWinter> In(
        string file, WeatherSeries weather, int month, int day, int days, int offsetMinutes)
    {
        int first = DateTimeOffset.FromUnixTimeMilliseconds(weather.CoversFrom).Year - 1;
        int last = DateTimeOffset.FromUnixTimeMilliseconds(weather.CoversTo).Year + 1;
        List<AheadWinter> found = [];
        for (int year = first; year <= last; year++)
        {
            DateOnly start = new(year, month, day);
            long from = Utc(start, offsetMinutes);
            if (from >= weather.CoversFrom && from + (days * DayMilliseconds) <= weather.CoversTo)
            {
                found.Add(new AheadWinter(file, start, from, weather));
            }
        }

        return found;
    }

    /// <summary>The first gap of the file that reaches into a winter, or null.</summary>
    public static WeatherGap? GapIn(AheadWinter winter, int days)
    {
        DateTimeOffset from = DateTimeOffset.FromUnixTimeMilliseconds(winter.StartUtcMilliseconds);
        DateTimeOffset to = from.AddDays(days);
        return winter.Weather.Gaps.FirstOrDefault(g => g.From < to && g.Before > from);
    }

    private static long Utc(DateOnly start, int offsetMinutes) =>
        new DateTimeOffset(start.ToDateTime(TimeOnly.MinValue), TimeSpan.FromMinutes(offsetMinutes)).ToUnixTimeMilliseconds();
}
