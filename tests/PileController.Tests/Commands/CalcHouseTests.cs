using System.Text.Json;

namespace PileController.Tests.Commands;

public sealed class CalcHouseTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-house-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]

    // Worked example by the formulae U·A·ΔT and 0.018·V·N·ΔT: 1500 ft², U 0.70, 8000 ft³, one air change, 50 °F.
    [InlineData("lossBtuPerHour", 59_700)]
    [InlineData("lossWatts", 17_496)]
    [InlineData("transmissionWatts", 52_500 * 0.293071070172)]
    [InlineData("infiltrationWatts", 7200 * 0.293071070172)]
    public async Task House_OfTheBulletinsExample_LosesWhatItSays(string key, double published)
    {
        JsonElement answer = await Answered("calc", "house", "--settings", ExampleFile(), "--inside", "50 °F", "--outside", "0 °F");
        Assert.Equal(published, answer.GetProperty(key).GetDouble(), 1e-4 * published);
    }

    [Fact]
    public async Task House_ForMachines_BeginsWithTheAgreedKeysAndNamesTheWhatIfs()
    {
        JsonElement answer = await Answered("calc", "house", "--inside", "45 °F", "--outside", "0 °F");

        Assert.Equal(
            ["lossWatts", "lossBtuPerHour", "transmissionWatts", "infiltrationWatts", "lossWattsPerKelvin", "airChangesPerHour", "whatIfs"],
            answer.EnumerateObject().Select(p => p.Name));
        Assert.Equal(
            ["curtain", "secondSkin", "thermalMass", "lowerSetPoint"],
            answer.GetProperty("whatIfs").EnumerateArray().Select(w => w.GetProperty("kind").GetString()));
    }

    [Fact]
    public async Task House_WithItsCurtainDrawn_LosesWhatTheWhatIfSaid()
    {
        JsonElement open = await Answered("calc", "house", "--inside", "45 °F", "--outside", "0 °F");
        JsonElement drawn = await Answered("calc", "house", "--inside", "45 °F", "--outside", "0 °F", "--curtain", "drawn");

        Assert.Equal(open.GetProperty("whatIfs")[0].GetProperty("lossWatts").GetDouble(), drawn.GetProperty("lossWatts").GetDouble(), 1e-6);
        Assert.True(drawn.GetProperty("lossWatts").GetDouble() < open.GetProperty("lossWatts").GetDouble());
    }

    [Fact]
    public async Task House_InStrongerWind_LosesMoreByItsLeaksOnly()
    {
        JsonElement[] nights =
        [
            await Answered("calc", "house", "--inside", "7 °C", "--outside", "-18 °C", "--wind", "0 m/s"),
            await Answered("calc", "house", "--inside", "7 °C", "--outside", "-18 °C"),
            await Answered("calc", "house", "--inside", "7 °C", "--outside", "-18 °C", "--wind", "30 mph"),
        ];

        double[] leaks = [.. nights.Select(n => n.GetProperty("infiltrationWatts").GetDouble())];
        Assert.True(leaks[0] < leaks[1] && leaks[1] < leaks[2]);
        Assert.Single(nights.Select(n => n.GetProperty("transmissionWatts").GetDouble()).Distinct());
    }

    [Fact]
    public async Task House_ForPeople_SaysWhichAirChangesItTook()
    {
        Assert.Contains("as the settings say", (await CommandLine.RunAsync("calc", "house", "--inside", "45 °F", "--outside", "0 °F")).Output, StringComparison.Ordinal);
        Assert.Contains(
            "in a wind of 4.5 m/s (10 mph)",
            (await CommandLine.RunAsync("calc", "house", "--inside", "45 °F", "--outside", "0 °F", "--wind", "10 mph")).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--outside is 10 °C; allowed: at most --inside, 7 °C", "--inside", "7 °C", "--outside", "50 °F")]
    [InlineData("--wind is \"-3 m/s\"; allowed: 0 m/s to 40 m/s", "--inside", "7 °C", "--outside", "0 °C", "--wind", "-3 m/s")]
    [InlineData("--wind is \"3\"; allowed: a speed needs its unit", "--inside", "7 °C", "--outside", "0 °C", "--wind", "3")]
    [InlineData("--curtain is \"shut\"; allowed: one of \"open\", \"drawn\"", "--inside", "7 °C", "--outside", "0 °C", "--curtain", "shut")]
    [InlineData("--outside is missing", "--inside", "7 °C")]
    [InlineData("--settings is \"/no/such.json\": there is no such file", "--inside", "7 °C", "--outside", "0 °C", "--settings", "/no/such.json")]
    public async Task House_OfTheImpossible_IsToldByName(string words, params string[] options)
    {
        CommandLine run = await CommandLine.RunAsync(["calc", "house", .. options]);

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    private string ExampleFile()
    {
        string path = Path.Combine(_folder, "pile.json");
        File.WriteAllText(path, """
            { "house": { "glazingArea": "1500 ft2", "glazingU": "0.70 BTU/hft2°F", "volume": "8000 ft3", "airChanges": "1 1/h" } }
            """);
        return path;
    }

    private static async Task<JsonElement> Answered(params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync([.. args, "--json"]);
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        return JsonDocument.Parse(run.Output).RootElement;
    }
}
