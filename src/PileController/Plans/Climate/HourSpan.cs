using PileController.Physics.Sky.Weather;

namespace PileController.Plans.Climate;

/// <summary>The whole hours of a weather series that lie in a span.</summary>
internal static class HourSpan
{
    private const long HourMs = 3_600_000;

    /// <summary>Each hour with its instant, earliest first; never none.</summary>
    /// <param name="weather">The weather.</param>
    /// <param name="fromUtcMs">First instant, ms since 1970-01-01 UTC.</param>
    /// <param name="toUtcMs">End, itself outside, ms since 1970-01-01 UTC.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weather does not cover the span, or the span holds no hour.</exception>
    public static IReadOnlyList<(long UtcMs, double OutsideC)> Of(WeatherSeries weather, long fromUtcMs, long toUtcMs)
    {
        if (fromUtcMs < weather.CoversFrom || toUtcMs > weather.CoversTo + HourMs || toUtcMs <= fromUtcMs)
        {
            throw new ArgumentOutOfRangeException(
                nameof(fromUtcMs), fromUtcMs,
                $"The span from {Day(fromUtcMs)} to {Day(toUtcMs)} must not be empty and must lie in the weather, {Day(weather.CoversFrom)} to {Day(weather.CoversTo)}.");
        }

        long first = (fromUtcMs - weather.FirstHourUtcMilliseconds + HourMs - 1) / HourMs;
        List<(long, double)> hours = [];
        for (long hour = first; weather.FirstHourUtcMilliseconds + (hour * HourMs) < toUtcMs; hour++)
        {
            hours.Add((weather.FirstHourUtcMilliseconds + (hour * HourMs), weather.OutsideC[(int)hour]));
        }

        return hours.Count > 0
            ? hours
            : throw new ArgumentOutOfRangeException(nameof(toUtcMs), toUtcMs, $"No whole hour of the weather lies between {Day(fromUtcMs)} and {Day(toUtcMs)}.");
    }

    private static string Day(long utcMs) => $"{DateTimeOffset.FromUnixTimeMilliseconds(utcMs):yyyy-MM-dd HH:mm} UTC";
}
