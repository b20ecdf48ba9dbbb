namespace PileController.Physics.Sky.Weather;

/// <summary>Hourly arrays being filled; NaN where nothing is known yet.</summary>
internal sealed class HourGrid
{
    public HourGrid(long firstUtcMilliseconds, int hours)
    {
        FirstUtcMilliseconds = firstUtcMilliseconds;
        OutsideC = Empty(hours);
        SunWPerM2 = Empty(hours);
        WindMPerS = Empty(hours);
        Humidity = Empty(hours);
        PressurePa = Empty(hours);
    }

    public long FirstUtcMilliseconds { get; }

    public double[] OutsideC { get; }

    public double[] SunWPerM2 { get; }

    public double[] WindMPerS { get; }

    public double[] Humidity { get; }

    public double[] PressurePa { get; }

    public long Instant(int hour) => FirstUtcMilliseconds + (hour * WeatherSeries.HourMilliseconds);

    private static double[] Empty(int hours)
    {
        double[] values = new double[hours];
        Array.Fill(values, double.NaN);
        return values;
    }
}
