using System.Text.Json;

namespace PileController.Tests.Commands;

public class CalcAirCircuitTests
{
    private static readonly string[] Duct =
        ["calc", "duct", "--diameter", "4 in", "--length", "40 ft", "--flow", "60 ft3/min", "--inlet", "50 °F", "--heap", "140 °F"];

    private static readonly string[] Through =
        ["calc", "through-heap", "--flow", "100 ft3/min", "--inlet", "10 °C", "--inlet-humidity", "50", "--heap", "60 °C"];

    [Fact]
    public async Task Duct_ForMachines_BeginsWithTheAgreedKeys() => Assert.Equal(
        ["outletC", "drawWatts", "pressureDropPa", "drawBtuPerHour", "blowerWatts", "velocityMPerS", "reynolds", "bedWattsPerMetreKelvin"],
        await Keys(Duct));

    [Fact]
    public async Task ThroughHeap_ForMachines_BeginsWithTheAgreedKeys() => Assert.Equal(
        [
            "sensibleWatts", "latentWatts", "waterLostKgPerDay", "oxygenSuppliedKgPerDay",
            "totalWatts", "sensibleBtuPerHour", "latentBtuPerHour", "totalBtuPerHour",
            "closedDuctWatts", "closedDuctBtuPerHour", "heatOfOxygenWatts", "carbonDioxideKgPerDay",
            "condensateLitresPerDay", "releasedWatts", "releasedBtuPerHour", "cautions",
        ],
        await Keys(Through));

    [Theory]

    // Computed with PsychroLib 2.5.0 at 101325 Pa (formulae of ASHRAE Fundamentals 2017 ch. 1), 2 %: 25.67 kW and 31.3 kg/h.
    [InlineData("totalWatts", 25_670, "60 °C")]
    [InlineData("waterLostKgPerDay", 31.3 * 24, "60 °C")]

    // The same: 14.89 kW and 17.4 kg/h; 33.98 kW and 42.2 kg/h.
    [InlineData("totalWatts", 14_890, "122 °F")]
    [InlineData("waterLostKgPerDay", 17.4 * 24, "122 °F")]
    [InlineData("totalWatts", 33_980, "149 °F")]
    [InlineData("waterLostKgPerDay", 42.2 * 24, "149 °F")]
    public async Task ThroughHeap_OfAPublishedCase_GivesItsValue(string key, double published, string heap)
    {
        JsonElement answer = await Answered([.. Through[..^1], heap]);
        Assert.Equal(published, answer.GetProperty(key).GetDouble(), 0.02 * published);
    }

    [Fact]
    public async Task ThroughHeap_InItsParts_AddsUpInBothSystems()
    {
        JsonElement answer = await Answered(Through);
        double total = answer.GetProperty("totalWatts").GetDouble();
        Assert.Equal(total, answer.GetProperty("sensibleWatts").GetDouble() + answer.GetProperty("latentWatts").GetDouble(), 1e-6);
        Assert.Equal(total / 0.293071070172, answer.GetProperty("totalBtuPerHour").GetDouble(), 1e-3);

        // Air that is never cooled drips nothing.
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("condensateLitresPerDay").ValueKind);
    }

    [Fact]
    public async Task ThroughHeap_ForPeople_ShowsBothCircuitsSideBySideAndWarns()
    {
        CommandLine run = await CommandLine.RunAsync([.. Through, "--house", "50 °F"]);

        Assert.Equal(0, run.ExitCode);
        Assert.Matches(@"through the heap, in all +2\d\.\d\d kW \(8\d{4} BTU/h\)", run.Output);
        Assert.Matches(@"dry in a closed duct +29\d\d W \(100\d\d BTU/h\)", run.Output);
        Assert.Contains("times as much from the same cubic foot", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"of condensate a day", run.Output);
        Assert.Matches("carbon dioxide, ammonia and spores.*local codes and licensed trades decide", run.Output);
    }

    [Fact]
    public async Task Duct_ThatIsVeryLong_BringsTheAirToTheHeapsTemperature()
    {
        JsonElement answer = await Answered([.. Duct[..4], "--length", "500 m", .. Duct[6..]]);
        Assert.Equal(60, answer.GetProperty("outletC").GetDouble(), 0.1);
    }

    [Fact]
    public async Task Duct_AfterLonger_DrawsLessSinceTheBedHasCooled()
    {
        double fresh = (await Answered([.. Duct, "--after", "2 d"])).GetProperty("drawWatts").GetDouble();
        double tired = (await Answered([.. Duct, "--after", "120 d"])).GetProperty("drawWatts").GetDouble();
        Assert.True(tired < fresh);
    }

    [Fact]
    public async Task Duct_InABetterBed_DrawsMoreAndItsBlowerTheSame()
    {
        JsonElement poor = await Answered([.. Duct, "--bed-conductivity", "0.2 W/mK"]);
        JsonElement good = await Answered([.. Duct, "--bed-conductivity", "0.8 W/mK"]);
        Assert.True(good.GetProperty("drawWatts").GetDouble() > 1.5 * poor.GetProperty("drawWatts").GetDouble());
        Assert.Equal(poor.GetProperty("blowerWatts").GetDouble(), good.GetProperty("blowerWatts").GetDouble(), 0.3);
    }

    [Theory]
    [InlineData("--length is \"-40 ft\"; allowed: 0.1 m to 500 m", "calc", "duct", "--diameter", "4 in", "--length", "-40 ft", "--flow", "60 ft3/min", "--inlet", "50 °F", "--heap", "140 °F")]
    [InlineData("--diameter is \"4\"; allowed: a length needs its unit", "calc", "duct", "--diameter", "4", "--length", "40 ft", "--flow", "60 ft3/min", "--inlet", "50 °F", "--heap", "140 °F")]
    [InlineData("--heap is \"220 °F\"; allowed: 0 °C to 90 °C", "calc", "duct", "--diameter", "4 in", "--length", "40 ft", "--flow", "60 ft3/min", "--inlet", "50 °F", "--heap", "220 °F")]
    [InlineData("--after is 1 d; allowed: at least", "calc", "duct", "--diameter", "0.5 m", "--length", "40 ft", "--flow", "60 ft3/min", "--inlet", "50 °F", "--heap", "140 °F", "--after", "1 d")]
    [InlineData("--blower-efficiency is \"120 %\"; allowed: 1 % to 90 %", "calc", "duct", "--diameter", "4 in", "--length", "40 ft", "--flow", "60 ft3/min", "--inlet", "50 °F", "--heap", "140 °F", "--blower-efficiency", "120 %")]
    [InlineData("--inlet-humidity is missing", "calc", "through-heap", "--flow", "8 ft3/min", "--inlet", "50 °F", "--heap", "140 °F")]
    [InlineData("--inlet-humidity is \"140\"; allowed: 0.1 to 100 percent", "calc", "through-heap", "--flow", "8 ft3/min", "--inlet", "50 °F", "--inlet-humidity", "140", "--heap", "140 °F")]
    [InlineData("--flow is \"0 ft3/min\"; allowed: 0.1 m3/h", "calc", "through-heap", "--flow", "0 ft3/min", "--inlet", "50 °F", "--inlet-humidity", "50", "--heap", "140 °F")]
    [InlineData("--house is 50 °C; allowed: at most --heap, 40 °C", "calc", "through-heap", "--flow", "8 ft3/min", "--inlet", "50 °F", "--inlet-humidity", "50", "--heap", "40 °C", "--house", "50 °C")]
    public async Task AirCircuit_OfTheImpossible_IsToldByName(string words, params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync(args);

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    private static async Task<string[]> Keys(string[] args) => [.. (await Answered(args)).EnumerateObject().Select(p => p.Name)];

    private static async Task<JsonElement> Answered(params IReadOnlyList<string> args)
    {
        CommandLine run = await CommandLine.RunAsync([.. args, "--json"]);
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        Assert.Single(run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        return JsonDocument.Parse(run.Output).RootElement;
    }
}
