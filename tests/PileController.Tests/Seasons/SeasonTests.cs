using PileController.Control;
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

        // A record compares its list by identity: it is compared by itself.
        Assert.Equal(once.NotMeasured, again.NotMeasured);
        Assert.Equal(once with { WallSeconds = 1, NotMeasured = [] }, again with { WallSeconds = 1, NotMeasured = [] });
    }

    private static async Task<SeasonResult> RunAsync(string file, int year, DrawPolicy policy, int days = 150)
    {
        PileSettings settings = PileSettings.AlderBank;
        using StreamReader reader = new(Path.Combine(AppContext.BaseDirectory, "Weather", file));
        WeatherSeries weather = WeatherFile.Read(reader, file, HoldingBuild.Place(settings));
        SeasonPlan plan = SeasonPlanning.Of(
            settings, settings.Control with { Policy = policy }, weather, new DateOnly(year, 11, 1), days);
        (SeasonResult result, _) = await SeasonRun.RunAsync(plan, TimeProvider.System, null, CancellationToken.None);
        return result;
    }
}
