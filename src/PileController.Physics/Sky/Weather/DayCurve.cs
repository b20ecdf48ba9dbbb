namespace PileController.Physics.Sky.Weather;

/// <summary>
/// Temperature through the day from its extremes: half waves of a cosine from the lowest at sunrise up to the highest two hours
/// after solar noon, and down to the next sunrise. That is de Wit's method as Reicosky and others describe it (Agricultural and
/// Forest Meteorology 46, 1989; from memory), with the peak tied to the sun rather than to two o'clock.
/// A cold front that puts the lowest in the evening is not in it.
/// </summary>
internal sealed class DayCurve
{
    private const long PeakAfterNoon = 2 * WeatherSeries.HourMilliseconds;

    // Where the sun does not rise, the lowest is taken a quarter of a day before noon (common practice, no source).
    private static readonly TimeSpan WithoutSunrise = TimeSpan.FromHours(6);

    private readonly List<long> _times = [];
    private readonly List<double> _valuesC = [];
    private int _at;

    public DayCurve(DateOnly firstDate, double[] lowestC, double[] highestC, Place place)
    {
        for (int day = -1; day <= lowestC.Length; day++)
        {
            // The days before the first and after the last are taken as like them.
            int like = Math.Clamp(day, 0, lowestC.Length - 1);
            DateOnly date = firstDate.AddDays(day);
            SunDay sun = Sun.Day(place.LatitudeDegrees, place.LongitudeDegrees, date, place.UtcOffset);
            long midnight = Sun.UtcMilliseconds(date) - (long)place.UtcOffset.TotalMilliseconds;
            long noon = midnight + (long)sun.SolarNoon.ToTimeSpan().TotalMilliseconds;
            TimeSpan morning = sun.Sunrise is { } rise ? sun.SolarNoon - rise : WithoutSunrise;
            Add(noon - (long)morning.TotalMilliseconds, lowestC[like]);
            Add(noon + PeakAfterNoon, highestC[like]);
        }
    }

    /// <summary>Temperature at an instant, °C; asked for in rising order.</summary>
    public double At(long instant)
    {
        while (_times[_at + 1] <= instant)
        {
            _at++;
        }

        double share = (instant - _times[_at]) / (double)(_times[_at + 1] - _times[_at]);
        double wave = 0.5 * (1 - Portable.Cos(Math.PI * share));
        return _valuesC[_at] + (wave * (_valuesC[_at + 1] - _valuesC[_at]));
    }

    private void Add(long time, double valueC)
    {
        _times.Add(time);
        _valuesC.Add(valueC);
    }
}
