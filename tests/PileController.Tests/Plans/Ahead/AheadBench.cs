using PileController.Physics.Sky.Weather;
using PileController.Plans.Ahead;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Tests.Plans.Ahead;

/// <summary>Recorded winters (NOAA GHCN-Daily; see tests/Weather) for the season ahead.</summary>
internal static class AheadBench
{
    public const string NewYork = "new-york-daily-2012-2013.csv";
    public const string Seattle = "seattle-daily-2012-2015.csv";

    public static string PathOf(string file) => Path.Combine(AppContext.BaseDirectory, "Weather", file);

    public static WeatherSeries Weather(string file)
    {
        using StreamReader reader = new(PathOf(file));
        return WeatherFile.Read(reader, file, HoldingBuild.Place(PileSettings.AlderBank));
    }

    public static AheadRequest Request(
        int seasons, int days, long seed = 1, PileSettings? settings = null, params IReadOnlyList<string> files)
    {
        PileSettings holding = settings ?? PileSettings.AlderBank;
        IReadOnlyList<string> chosen = files.Count > 0 ? files : [NewYork, Seattle];
        int offset = HoldingBuild.StandardOffsetMinutes(holding);
        return new AheadRequest(
            holding, [.. chosen.SelectMany(f => WinterFinding.In(f, Weather(f), 11, 1, days, offset))], seasons, days, seed);
    }
}
