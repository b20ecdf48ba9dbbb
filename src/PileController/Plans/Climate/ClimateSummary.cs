using PileController.Physics.Sky.Weather;

namespace PileController.Plans.Climate;

/// <summary>What a span of weather asks of a house: how cold it gets, and for how long.</summary>
/// <param name="ColdestC">The coldest hour, °C.</param>
/// <param name="DesignC">The design night: 99 of 100 hours of the span are warmer, °C.</param>
/// <param name="MeanC">Mean of the hours, °C.</param>
/// <param name="DegreeHours">Kelvin below the set point, summed over the hours, K·h.</param>
/// <param name="HoursBelowZero">Hours below 0 °C, h.</param>
internal sealed record ClimateSummary(double ColdestC, double DesignC, double MeanC, double DegreeHours, double HoursBelowZero)
{
    // A heater chosen for the coldest hour on record stands idle; designers go by the hour that 99 % are warmer than.
    private const double DesignShare = 0.01;

    /// <summary>Sums up the hours of a span.</summary>
    /// <param name="weather">The weather.</param>
    /// <param name="fromUtcMs">First instant, ms since 1970-01-01 UTC; every whole hour of the weather from here on counts.</param>
    /// <param name="toUtcMs">End, ms since 1970-01-01 UTC; an hour that begins here no longer counts.</param>
    /// <param name="setPointC">Temperature below which the house wants heat, °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weather has no hour in the span, or does not cover it.</exception>
    public static ClimateSummary Of(WeatherSeries weather, long fromUtcMs, long toUtcMs, double setPointC)
    {
        double[] hours = [.. HourSpan.Of(weather, fromUtcMs, toUtcMs).Select(h => h.OutsideC)];
        Array.Sort(hours);
        return new ClimateSummary(
            hours[0],
            At(hours, DesignShare),
            hours.Average(),
            hours.Sum(c => Math.Max(0, setPointC - c)),
            hours.Count(c => c < 0));
    }

    // Straight between the two hours that lie about the share, so that one hour more or less makes no jump.
    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        int above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((place - below) * (sorted[above] - sorted[below]));
    }
}
