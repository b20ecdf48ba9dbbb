using PileController.Physics.Sky;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Sky.Weather;

/// <summary>Places and files the weather tests share.</summary>
internal static class Sample
{
    public static readonly Place NewYork = new(40.78, -73.97, TimeSpan.FromHours(-5));
    public static readonly Place Seattle = new(47.45, -122.31, TimeSpan.FromHours(-8), 130);

    public static WeatherSeries File(string name, Place place)
    {
        using StreamReader reader = new(Path.Combine(AppContext.BaseDirectory, "Weather", name));
        return WeatherFile.Read(reader, name, place);
    }

    public static WeatherSeries Text(string text, Place? place = null, WeatherOptions? options = null) =>
        WeatherFile.Read(new StringReader(text), "made.csv", place ?? NewYork, options);

    public static string Faults(string text, WeatherOptions? options = null) =>
        Assert.Throws<WeatherFileException>(() => Text(text, null, options)).Message;

    public static long Utc(int year, int month, int day, double hour, Place place) =>
        new DateTimeOffset(year, month, day, 0, 0, 0, place.UtcOffset).AddHours(hour).ToUnixTimeMilliseconds();
}
