using PileController.Physics.Sky.Weather;
using PileController.Plans.Ahead;
using PileController.Plans.Sketch;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Panel.Planning;

/// <summary>The season the page's what-ifs are reckoned over.</summary>
internal static class PlanSeason
{
    /// <summary>Days from building: a winter.</summary>
    public const int Days = 150;

    // The same run tells the same each time it is asked for.
    private const int Seed = 1;

    /// <summary>Which weather, in words for people.</summary>
    public const string Weather = "the winter of 2025 to 2026 in the weather that ships with the program";

    /// <summary>The day the heap is built.</summary>
    public static DateOnly Start => Demo.Built;

    /// <summary>Sketches over this season. The place of the first settings holds; what-ifs do not move the holding.</summary>
    public static Func<PileSettings, PlanSketch> Sketcher(PileSettings holding)
    {
        // Read once, when it is first asked for: most days nobody opens the plan.
        Lazy<WeatherSeries> weather = new(() => Demo.Weather(HoldingBuild.Place(holding)));
        return settings => PlanSketching.Of(settings, weather.Value, Start, Days);
    }

    /// <summary>A run of seasons ahead over every winter of the same weather.</summary>
    public static AheadRequest Ahead(PileSettings holding, int seasons) => new(
        holding,
        WinterFinding.In(
            Demo.WeatherFileName, Demo.Weather(HoldingBuild.Place(holding)), Start.Month, Start.Day, Days, HoldingBuild.StandardOffsetMinutes(holding)),
        seasons, Days, Seed);
}
