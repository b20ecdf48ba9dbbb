using System.Globalization;
using System.Text.Json;

namespace PileController.Tests.Commands;

public class CalcTests
{
    [Theory]

    // IAPWS-IF97 by python3-iapws 1.5.2 (saturated liquid): 10 °C 999.6537 kg/m³, 4.19583 kJ/(kg·K), 42.0211 kJ/kg.
    [InlineData("densityKgPerM3", 999.6537, 0.05, "calc", "water", "--temp", "10 °C", "--json")]
    [InlineData("specificHeatJPerKgK", 4195.83, 2, "calc", "water", "--temp", "50 °F", "--json")]
    [InlineData("enthalpyJPerKg", 42_021.1, 50, "calc", "water", "--temp", "283.15 K", "--json")]

    // The same program, 40 °C: 652.719 µPa·s.
    [InlineData("viscosityPaS", 652.719e-6, 6.5e-6, "calc", "water", "--temp", "40 °C", "--json")]

    // IAPWS 2011 conductivity release check value as asserted by the iapws package: 607.712868 mW/(m·K) at 298.15 K, 998 kg/m³.
    [InlineData("conductivityWPerMK", 0.607712868, 0.006, "calc", "water", "--temp", "298.15 K", "--json")]

    // PsychroLib 2.5.0 (formulae of ASHRAE Fundamentals 2017 ch. 1), saturated, 101325 Pa, 55 °C.
    [InlineData("humidityRatioKgPerKg", 0.114552, 1.2e-5, "calc", "air", "--temp", "55 °C", "--humidity", "100", "--json")]
    [InlineData("enthalpyJPerKgDryAir", 353_543, 36, "calc", "air", "--temp", "131 °F", "--humidity", "100 %", "--json")]
    [InlineData("specificVolumeM3PerKg", 1.10083, 1.2e-4, "calc", "air", "--temp", "55 °C", "--humidity", "100", "--pressure", "101325 Pa", "--json")]
    [InlineData("dewPointC", 55, 1e-4, "calc", "air", "--temp", "55 °C", "--humidity", "100", "--json")]

    // PsychroLib 2.5.0 test suite quoting ASHRAE Fundamentals 2017 ch. 1: 3169.7 Pa at 25 °C, 401.74 Pa at -5 °C over ice.
    [InlineData("saturationPressurePa", 3169.7, 1, "calc", "air", "--temp", "25 °C", "--humidity", "50", "--json")]
    [InlineData("saturationPressurePa", 401.74, 0.13, "calc", "air", "--temp", "-5 °C", "--humidity", "50", "--json")]

    // The same suite: wet bulb 3.92667433781955 °C at 7 °C, 61 %, 100 000 Pa.
    [InlineData("wetBulbC", 3.92667433781955, 0.004, "calc", "air", "--temp", "7 °C", "--humidity", "61", "--pressure", "100 kPa", "--json")]

    // IAPWS-IF97 by python3-iapws 1.5.2: 1 US gal/min from 10 to 60 °C metered at the 10 °C side carries 13.188 kW;
    // metered at the 60 °C side the same litres weigh 983.1751 kg/m³ instead of 999.6537 kg/m³.
    [InlineData("drawWatts", 13_188, 14, "calc", "draw", "--flow", "1 gal/min", "--supply", "140 °F", "--return", "50 °F", "--json")]
    [InlineData("drawWatts", 13_188 * 983.1751 / 999.6537, 14, "calc", "draw", "--flow", "1 gal/min", "--supply", "140 °F", "--return", "50 °F", "--meter", "supply", "--json")]

    // The same with 1 BTU/h = 0.293071070172 W (GNU units).
    [InlineData("drawBtuPerHour", 13_188 / 0.293071070172, 48, "calc", "draw", "--flow", "1 gal/min", "--supply", "60 °C", "--return", "10 °C", "--json")]
    public async Task Calc_OfAPublishedCase_GivesItsValue(string key, double expected, double tolerance, params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync(args);

        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        using JsonDocument answer = JsonDocument.Parse(run.Output);
        Assert.Equal(expected, answer.RootElement.GetProperty(key).GetDouble(), tolerance);
    }

    [Theory]
    [InlineData("densityKgPerM3,specificHeatJPerKgK,enthalpyJPerKg,viscosityPaS,conductivityWPerMK", "calc", "water", "--temp", "40 °C", "--json")]
    [InlineData("saturationPressurePa,humidityRatioKgPerKg,enthalpyJPerKgDryAir,specificVolumeM3PerKg,dewPointC,wetBulbC", "calc", "air", "--temp", "55 °C", "--humidity", "100", "--json")]
    [InlineData("sunrise,solarNoon,sunset,noonElevationDegrees", "calc", "sun", "--latitude", "39.74", "--longitude", "-105.18", "--date", "2003-10-17", "--utc-offset", "-7", "--json")]
    [InlineData("drawWatts,drawBtuPerHour", "calc", "draw", "--flow", "4 L/min", "--supply", "55 °C", "--return", "50 °C", "--json")]
    public async Task Calc_ForMachines_HasTheAgreedKeys(string keys, params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync(args);
        using JsonDocument answer = JsonDocument.Parse(run.Output);
        Assert.Equal(keys, string.Join(',', answer.RootElement.EnumerateObject().Select(p => p.Name)));
    }

    [Theory]

    // Golden, Colorado (39.742476 N, 105.1786 W), UTC-7, by NREL's Solar Position Algorithm as asserted in pvlib's tests.
    [InlineData("2015-01-02", "-7", "sunrise", "07:21:55", 60)]
    [InlineData("2015-01-02", "-7", "solarNoon", "12:04:45", 10)]
    [InlineData("2015-01-02", "-7", "sunset", "16:47:43", 60)]
    [InlineData("2015-08-02", "-07:00", "sunrise", "05:00:27", 60)]
    [InlineData("2015-08-02", "-07:00", "solarNoon", "12:06:58", 10)]

    // Published under the UTC date 2015-08-02 (02:13:58), which is the evening of the first by local date.
    [InlineData("2015-08-01", "-07:00", "sunset", "19:13:58", 60)]
    public async Task CalcSun_OfAPublishedDay_GivesItsTimes(string date, string offset, string key, string published, double seconds)
    {
        CommandLine run = await CommandLine.RunAsync(
            "calc", "sun", "--latitude", "39.742476", "--longitude", "-105.1786", "--date", date, "--utc-offset", offset, "--json");

        Assert.Equal(0, run.ExitCode);
        using JsonDocument answer = JsonDocument.Parse(run.Output);
        string computed = answer.RootElement.GetProperty(key).GetString()!;
        Assert.Equal(SecondsOf(published), SecondsOf(computed), seconds);
    }

    [Fact]
    public async Task CalcSun_InPolarNight_SaysThatTheSunDoesNotRise()
    {
        string[] args = ["calc", "sun", "--latitude", "80", "--longitude", "0", "--date", "2015-12-21"];
        Assert.Contains("the sun does not rise", (await CommandLine.RunAsync(args)).Output, StringComparison.Ordinal);

        using JsonDocument answer = JsonDocument.Parse((await CommandLine.RunAsync([.. args, "--json"])).Output);
        Assert.Equal(JsonValueKind.Null, answer.RootElement.GetProperty("sunrise").ValueKind);
    }

    [Fact]
    public async Task Calc_ForPeople_ShowsBothSystems()
    {
        CommandLine run = await CommandLine.RunAsync("calc", "draw", "--flow", "1 gal/min", "--supply", "140 °F", "--return", "50 °F");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("60.0 °C (140.0 °F)", run.Output, StringComparison.Ordinal);
        Assert.Contains("3.79 L/min (1.00 gal/min), metered in the return line", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"13\.19 kW \(450\d\d BTU/h\)", run.Output);
    }

    [Fact]
    public async Task CalcAir_MoreVapourThanTheAirHolds_IsWrongUse()
    {
        CommandLine run = await CommandLine.RunAsync("calc", "air", "--temp", "120 °C", "--humidity", "100");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("a lower --temp or --humidity", run.Error, StringComparison.Ordinal);
    }

    private static double SecondsOf(string clock) => TimeSpan.Parse(clock, CultureInfo.InvariantCulture).TotalSeconds;
}
