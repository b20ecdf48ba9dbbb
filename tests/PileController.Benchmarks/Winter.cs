using PileController.Control;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks;

/// <summary>A recorded winter, from 1 November for 150 days, and whether numbers may be tuned on it.</summary>
internal sealed record Winter(string Name, string File, int Year, bool Training)
{
    public static IReadOnlyList<Winter> All { get; } =
    [
        new("Seattle 2012", "seattle-daily-2012-2015.csv", 2012, true),
        new("Seattle 2013", "seattle-daily-2012-2015.csv", 2013, true),
        new("Seattle 2014", "seattle-daily-2012-2015.csv", 2014, false),
        new("New York 2012", "new-york-daily-2012-2013.csv", 2012, false),
    ];

    /// <summary>Days of a winter.</summary>
    public const int Days = 150;

    /// <summary>One season of the shipped settings under a draw rule.</summary>
    public async Task<SeasonResult> RunAsync(ControlSettings control)
    {
        PileSettings settings = PileSettings.AlderBank;
        SeasonPlan plan = SeasonPlanning.Of(settings, control, Weather(), new DateOnly(Year, 11, 1), Days);
        (SeasonResult result, _) = await SeasonRun.RunAsync(plan, TimeProvider.System, null, CancellationToken.None);
        return result;
    }

    /// <summary>The weather it lies in.</summary>
    public WeatherSeries Weather()
    {
        string path = Path.Combine(AppContext.BaseDirectory, "Weather", File);
        using StreamReader reader = new(path);
        return WeatherFile.Read(reader, File, HoldingBuild.Place(PileSettings.AlderBank));
    }
}
