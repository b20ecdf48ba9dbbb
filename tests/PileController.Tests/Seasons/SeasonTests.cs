using PileController.Control;
using PileController.Forecasts;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;
using Xunit.Abstractions;

namespace PileController.Tests.Seasons;

/// <summary>The shipped settings on recorded winters (NOAA GHCN-Daily; see tests/Weather).</summary>
public sealed class SeasonTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("new-york-daily-2012-2013.csv", 2012)]
    [InlineData("seattle-daily-2012-2015.csv", 2012)]
    [InlineData("seattle-daily-2012-2015.csv", 2013)]
    [InlineData("seattle-daily-2012-2015.csv", 2014)]
    public async Task Means_OnARecordedWinter_KeepsTheFloorAndAvoidsNoLessColdThanTheCutout(string file, int year)
    {
        SeasonResult means = await RunAsync(file, year, DrawPolicy.Means);
        SeasonResult cutout = await RunAsync(file, year, DrawPolicy.Cutout);
        output.WriteLine($"{file} {year}: means {means}; cutout {cutout}");

        Assert.Equal(0, means.HoursBelowFloor);
        Assert.Null(means.StalledOnDay);
        Assert.True(
            means.ColdDegreeHours <= cutout.ColdDegreeHours,
            $"means {means.ColdDegreeHours:F1} K·h, cutout {cutout.ColdDegreeHours:F1} K·h");
        Assert.InRange(means.LitOnDay!.Value, 7, 20);
        Assert.True(means.Tonight!.Brier < means.Tonight.BrierClimatology, $"{means.Tonight}");
        Assert.True(means.Tonight.Brier < means.Tonight.BrierPersistence, $"{means.Tonight}");
        Assert.All((SeasonResult[])[means, cutout], r => Assert.True(r.EnergyErrorFraction <= 1e-9, $"{r.EnergyErrorFraction:E2}"));
    }

    [Theory]
    [InlineData(DrawPolicy.Thermostat)]
    [InlineData(DrawPolicy.Timer)]
    [InlineData(DrawPolicy.Always)]
    [InlineData(DrawPolicy.None)]
    public async Task Baseline_OnTheHardestWinter_ClosesItsBalanceAndDrawsNothingBeforeLighting(DrawPolicy policy)
    {
        SeasonResult season = await RunAsync("new-york-daily-2012-2013.csv", 2012, policy);
        SeasonResult unlit = await RunAsync("new-york-daily-2012-2013.csv", 2012, policy, days: 5);
        output.WriteLine($"{season}");

        Assert.True(season.EnergyErrorFraction <= 1e-9, $"{season.EnergyErrorFraction:E2}");
        Assert.Null(unlit.LitOnDay);
        Assert.Equal(0, unlit.FrostGuardHours);
        Assert.Equal(0, unlit.PumpKWh, 6);
    }

    [Fact]
    public async Task Thermostat_OnTheHardestWinter_DrawsTheHeapDown()
    {
        SeasonResult thermostat = await RunAsync("new-york-daily-2012-2013.csv", 2012, DrawPolicy.Thermostat);

        Assert.True(thermostat.HoursBelowFloor > 500, $"{thermostat.HoursBelowFloor:F0} h");
    }

    [Fact]
    public async Task Season_RunTwice_GivesTheSameBits()
    {
        SeasonResult once = await RunAsync("seattle-daily-2012-2015.csv", 2012, DrawPolicy.Means, days: 40);
        SeasonResult again = await RunAsync("seattle-daily-2012-2015.csv", 2012, DrawPolicy.Means, days: 40);

        // A record compares its lists by identity: they are compared by themselves.
        Assert.Equal(once.NotMeasured, again.NotMeasured);
        Assert.Equal(once.Tonight!.Reliability, again.Tonight!.Reliability);
        Assert.Equal(once.Tonight, again.Tonight with { Reliability = once.Tonight.Reliability });
        Assert.Equal(once with { WallSeconds = 1, NotMeasured = [], Tonight = null }, again with { WallSeconds = 1, NotMeasured = [], Tonight = null });
    }

    [Fact]
    public async Task Season_ToldTheWeatherThatComes_SaysTheNightsBetter()
    {
        // One winter has too few lost nights to tell the two apart.
        double told = 0;
        double untold = 0;
        foreach ((string file, int year) in new[] { ("new-york-daily-2012-2013.csv", 2012), ("seattle-daily-2012-2015.csv", 2012), ("seattle-daily-2012-2015.csv", 2013) })
        {
            TonightResult with = (await RunAsync(file, year, DrawPolicy.Means, 150, foretold: true)).Tonight!;
            TonightResult without = (await RunAsync(file, year, DrawPolicy.Means, 150)).Tonight!;
            output.WriteLine($"{file} {year}: told {with}; untold {without}");
            told += with.Brier * with.Nights;
            untold += without.Brier * without.Nights;
        }

        Assert.True(told < untold, $"told {told}, untold {untold}");
    }

    private static ForecastSeries Foretold(WeatherSeries weather, long from, int days)
    {
        WeatherSample[] hours = [.. Enumerable.Range(0, days * 24).Select(h => weather.At(Math.Min(weather.CoversTo - 1, from + (h * 3_600_000L) + 1_800_000)))];
        return new ForecastSeries(from, [.. hours.Select(s => s.OutsideC)], [.. hours.Select(s => s.SunWPerM2)], "what comes");
    }

    private static async Task<SeasonResult> RunAsync(string file, int year, DrawPolicy policy, int days = 150, bool foretold = false)
    {
        PileSettings settings = PileSettings.AlderBank;
        using StreamReader reader = new(Path.Combine(AppContext.BaseDirectory, "Weather", file));
        WeatherSeries weather = WeatherFile.Read(reader, file, HoldingBuild.Place(settings));
        SeasonPlan plan = SeasonPlanning.Of(
            settings, settings.Control with { Policy = policy }, weather, new DateOnly(year, 11, 1), days);
        plan = foretold ? plan with { Forecast = Foretold(weather, plan.StartUtcMilliseconds, days + 2) } : plan;
        (SeasonResult result, _) = await SeasonRun.RunAsync(plan, TimeProvider.System, null, CancellationToken.None);
        return result;
    }
}
