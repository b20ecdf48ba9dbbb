using PileController.Physics.Sky.Weather;

namespace PileController.Plans.Climate;

/// <summary>One month, or the part of it that lies in the span.</summary>
/// <param name="Year">Year, local.</param>
/// <param name="Month">Month, 1 to 12, local.</param>
/// <param name="ColdestC">The coldest hour, °C.</param>
/// <param name="MeanC">Mean of the hours, °C.</param>
/// <param name="DegreeHours">Kelvin below the set point, summed over the hours, K·h.</param>
internal sealed record ClimateMonth(int Year, int Month, double ColdestC, double MeanC, double DegreeHours)
{
    /// <summary>The months of a span, in order.</summary>
    /// <param name="weather">The weather.</param>
    /// <param name="fromUtcMs">First instant, ms since 1970-01-01 UTC.</param>
    /// <param name="toUtcMs">End, itself outside, ms since 1970-01-01 UTC.</param>
    /// <param name="setPointC">Temperature below which the house wants heat, °C.</param>
    /// <param name="utcOffset">Local time less UTC; says in which month an hour lies.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weather has no hour in the span, or does not cover it.</exception>
    public static IReadOnlyList<ClimateMonth> Of(WeatherSeries weather, long fromUtcMs, long toUtcMs, double setPointC, TimeSpan utcOffset) =>
    [
        .. HourSpan.Of(weather, fromUtcMs, toUtcMs)
            .GroupBy(h => DateTimeOffset.FromUnixTimeMilliseconds(h.UtcMs).ToOffset(utcOffset) is var local ? (local.Year, local.Month) : default)
            .Select(m => new ClimateMonth(
                m.Key.Year, m.Key.Month, m.Min(h => h.OutsideC), m.Average(h => h.OutsideC), m.Sum(h => Math.Max(0, setPointC - h.OutsideC)))),
    ];
}
