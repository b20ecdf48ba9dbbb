using PileController.Control.Foresight;

namespace PileController.Forecasts;

/// <summary>Foretold weather of any number of hours, as a file holds it.</summary>
/// <param name="FromUtcMilliseconds">Begin of the first hour.</param>
/// <param name="OutsideC">Air outside of each hour, °C.</param>
/// <param name="SunWPerM2">Sunshine of each hour, W/m², or null.</param>
/// <param name="Source">What it is called.</param>
internal sealed record ForecastSeries(long FromUtcMilliseconds, double[] OutsideC, double[]? SunWPerM2, string Source)
{
    private const long Hour = 3_600_000;

    /// <summary>The hours from the one that holds a moment on, at most as many as a forecast may have; null where none is left.</summary>
    /// <param name="utcMilliseconds">The moment; before the first hour all begin with it.</param>
    public Forecast? At(long utcMilliseconds)
    {
        long from = Math.Max(0, (utcMilliseconds - FromUtcMilliseconds) / Hour);
        if (from >= OutsideC.Length)
        {
            return null;
        }

        Range kept = (int)from..Math.Min(OutsideC.Length, (int)from + Forecast.MostHours);
        return new Forecast(FromUtcMilliseconds + (from * Hour), OutsideC[kept], SunWPerM2?[kept], Source);
    }
}
