using System.Globalization;
using System.Text;
using PileController.Physics.Sky;
using PileController.Physics.Sky.Weather;

namespace PileController.FarSide.Plants;

/// <summary>Plain weather: the air goes up and down once a day, warmest at 15:00; sun, wind and humidity as the file reader takes them.</summary>
public static class ColdNights
{
    private const int WarmestHour = 15;
    private const int HoursBefore = 24;

    /// <summary>Where Alder Bank lies.</summary>
    public static Place Place { get; } = new(45, 0, TimeSpan.Zero);

    /// <summary>Makes it.</summary>
    /// <param name="aroundUtc">It begins a day before this.</param>
    /// <param name="hours">How long after this it goes on, h.</param>
    /// <param name="leastC">Coldest, °C.</param>
    /// <param name="mostC">Warmest, °C.</param>
    public static WeatherSeries Of(DateTimeOffset aroundUtc, int hours, double leastC, double mostC)
    {
        StringBuilder text = new("date,temperature\n");
        DateTimeOffset first = new(aroundUtc.UtcDateTime.Date.AddHours(aroundUtc.UtcDateTime.Hour - HoursBefore), TimeSpan.Zero);
        for (int hour = 0; hour <= hours + HoursBefore + 1; hour++)
        {
            DateTimeOffset at = first.AddHours(hour);
            double swing = Math.Cos(2 * Math.PI * (at.Hour - WarmestHour) / 24);
            double celsius = (0.5 * (leastC + mostC)) + (0.5 * (mostC - leastC) * swing);
            text.Append(CultureInfo.InvariantCulture, $"{at:yyyy-MM-dd'T'HH:mm:ss},{celsius:0.00}\n");
        }

        using StringReader reader = new(text.ToString());
        return WeatherFile.Read(reader, "the nights told", Place);
    }
}
