using PileController.Control;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Rigs;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks.Records;

/// <summary>
/// Ticks as the demo's holding makes them, with a probe for the sun besides so that every channel has one: their noise, its
/// control, a recorded year's weather.
/// </summary>
internal static class DemoTicks
{
    private const int Year = 2012;
    private const string WeatherFile = "seattle-daily-2012-2015.csv";

    /// <summary>Ticks a day.</summary>
    public const int ADay = 8640;

    /// <summary>When the first tick is.</summary>
    public static readonly long StartUtcMilliseconds =
        new DateTimeOffset(Year, 11, 1, 0, 0, 0, TimeSpan.FromHours(-8)).ToUnixTimeMilliseconds();

    /// <summary>The same ticks each time it is asked for.</summary>
    public static IEnumerable<TickEntry> Of(int days)
    {
        PileSettings settings = PileSettings.AlderBank;
        Holding holding = new(
            HoldingBuild.Plant(settings), settings.Control, settings.Rig with { Probes = [.. settings.Rig.Probes, new ProbeFit(Channel.Sun)] }, new Winter("", WeatherFile, Year, true).Weather(),
            HoldingBuild.StandardOffsetMinutes(settings), StartUtcMilliseconds);
        for (int tick = 0; tick < days * ADay; tick++)
        {
            Memory before = holding.Memory;
            RigReadings readings = holding.Read();
            Control.Decisions.Decision decision = holding.Tick(readings, []);
            yield return new TickEntry(readings, [], before, decision, holding.Memory);
        }
    }
}
