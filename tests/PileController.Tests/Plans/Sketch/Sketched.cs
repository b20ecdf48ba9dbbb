using PileController.Physics.Sky.Weather;
using PileController.Plans.Sketch;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Tests.Plans.Sketch;

/// <summary>The demo holding's sketch in its own weather, made once for all tests.</summary>
internal static class Sketched
{
    public const int Days = 120;

    private static readonly Lazy<PlanSketch> LazyDemo = new(() => Of(PileSettings.AlderBank));
    private static readonly Lazy<SketchTrials> LazyTrials = new(() => Trials(PileSettings.AlderBank));

    public static WeatherSeries Weather { get; } = PileController.Simulation.Demo.Weather(HoldingBuild.Place(PileSettings.AlderBank));

    public static PlanSketch Demo => LazyDemo.Value;

    public static SketchTrials DemoTrials => LazyTrials.Value;

    public static PlanSketch Of(PileSettings settings) =>
        PlanSketching.Of(settings, Weather, PileController.Simulation.Demo.Built, Days);

    public static SketchTrials Trials(PileSettings settings) =>
        new(settings, Weather, PileController.Simulation.Demo.Built, Days);
}
