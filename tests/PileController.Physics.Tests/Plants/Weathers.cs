using PileController.Physics.Sky.Weather;
using PileController.Physics.Tests.Sky.Weather;

namespace PileController.Physics.Tests.Plants;

/// <summary>The measured winters the plant is tried in.</summary>
internal static class Weathers
{
    private static readonly Lazy<WeatherSeries> LazyNewYork = new(() => Sample.File("new-york-daily-2012-2013.csv", Sample.NewYork));
    private static readonly Lazy<WeatherSeries> LazySeattle = new(() => Sample.File("seattle-daily-2012-2015.csv", Sample.Seattle));

    public static WeatherSeries Of(string city) => city == "New York" ? LazyNewYork.Value : LazySeattle.Value;

    public static long FirstOfNovember(string city, int year) =>
        Sample.Utc(year, 11, 1, 0, city == "New York" ? Sample.NewYork : Sample.Seattle);
}
