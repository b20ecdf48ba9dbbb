using System.Globalization;
using System.Text.Json;
using PileController.Tests.Plans.Ahead;

namespace PileController.Tests.Commands;

public sealed class PlanTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-plan-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Plan_AskedForJson_TellsAllInOneLineTheSameEveryTime()
    {
        string[] args =
        [
            "plan", "--weather", AheadBench.PathOf(AheadBench.NewYork), AheadBench.PathOf(AheadBench.Seattle), "--seasons", "3", "--days", "15", "--seed", "9", "--json",
        ];
        CommandLine once = await CommandLine.RunAsync(args);
        CommandLine again = await CommandLine.RunAsync(args);

        Assert.Equal("", once.Error);
        Assert.Equal(0, once.ExitCode);
        Assert.Equal(once.Output, again.Output);
        Assert.Single(once.Output.TrimEnd('\n').Split('\n'));
        using JsonDocument answer = JsonDocument.Parse(once.Output);
        JsonElement root = answer.RootElement;
        Assert.Equal(3, root.GetProperty("seasons").GetInt32());
        Assert.Equal(9, root.GetProperty("seed").GetInt32());
        Assert.Equal(15, root.GetProperty("days").GetInt32());
        Assert.Equal(5, root.GetProperty("winters").GetArrayLength());
        Assert.Equal("2012-11-01", root.GetProperty("winters")[0].GetProperty("start").GetString());
        foreach (string key in (string[])["drawnKWh", "usefulKWh", "generatedKWh", "coldestC", "hoursBelowMinimum", "litOnDay", "fadedOnDay", "waterLostKg", "dryMassLostKg"])
        {
            Assert.True(root.GetProperty("ahead").GetProperty(key).TryGetProperty("p50", out _), key);
        }

        Assert.InRange(root.GetProperty("ahead").GetProperty("chanceOfHoldingMinimum").GetDouble(), 0, 1);
        Assert.Equal(4, root.GetProperty("money").GetProperty("fuels").GetArrayLength());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("wish").ValueKind);
    }

    [Fact]
    public async Task Plan_OfALiftThePumpDoesNotOvercome_TellsThatATripStoppedIt()
    {
        string lifted = Write("lift.json", """{ "loop": { "staticLift": "7.9 m" } }""");
        CommandLine open = await CommandLine.RunAsync("plan", "--settings", lifted, "--seasons", "1", "--days", "40");
        CommandLine closed = await CommandLine.RunAsync("plan", "--seasons", "1", "--days", "40");

        Assert.Contains("Stopped by a trip in 100", open.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Stopped by a trip", closed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_WithoutAFile_RunsTheDemoAndJudgesAWish()
    {
        string settings = Write("wish.json", """{ "units": "us", "plan": { "wish": { "flow": "1 gal/min", "from": "50 °F", "to": "140 °F" } } }""");
        CommandLine run = await CommandLine.RunAsync("plan", "--settings", settings, "--seasons", "2", "--days", "10");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("alder-bank-weather.csv", run.Output, StringComparison.Ordinal);
        Assert.Contains("Wish: 1.00 gal/min heated from 50.0 °F to 140.0 °F all winter is 4", run.Output, StringComparison.Ordinal);
        Assert.Contains("Parts reused", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_AskedToCheckItsTick_TellsATableForEachSeason()
    {
        CommandLine run = await CommandLine.RunAsync("plan", "--days", "5", "--check-tick", "2");
        Assert.Equal(0, run.ExitCode);
        Assert.Equal(2, run.Output.Split('\n').Count(l => l.StartsWith("| generatedKWh |", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("--seasons is \"0\"; allowed: a whole number from 1 to 5000", "--seasons", "0")]
    [InlineData("--days is \"-3\"; allowed: a whole number from 1 to 365", "--days", "-3")]
    [InlineData("--start is \"02-30\"; allowed: a month and a day as 11-01", "--start", "02-30")]
    [InlineData("--weather is \"/no/such/weather.csv\": Could not find", "--weather", "/no/such/weather.csv")]
    [InlineData("--settings is \"/no/such/pile.json\": there is no such file", "--settings", "/no/such/pile.json")]
    [InlineData("covers no winter; allowed: a file that covers 365 days from 11-01 (--start, --days)", "--days", "365")]
    public async Task Plan_UsedWrongly_IsToldSoWithCodeTwo(string words, params string[] args) => await AssertWrongAsync(words, args);

    [Fact]
    public async Task Plan_OnOneGoodAndOneUnreadableFile_DoesNothing()
    {
        string bad = Write("bad.csv", "date,temp_max,temp_min\n2012-11-01,warm,2\n");
        await AssertWrongAsync("line 2", ["--weather", AheadBench.PathOf(AheadBench.NewYork), "--weather", bad]);
    }

    [Fact]
    public async Task Plan_OnTheSameFileTwice_IsToldSoWithCodeTwo()
    {
        string path = AheadBench.PathOf(AheadBench.NewYork);
        await AssertWrongAsync("2 times; allowed: each file once.", ["--weather", path, "--weather", path]);
    }

    [Fact]
    public async Task Plan_OnAWinterWithAGap_NamesFileSpanAndWhatIsAllowed()
    {
        string[] lines = File.ReadAllLines(AheadBench.PathOf(AheadBench.NewYork));
        string gappy = Write("gappy.csv", string.Join('\n', lines.Where(l => !l.Contains("2013-01-10", StringComparison.Ordinal))));
        await AssertWrongAsync("missing from 2013-01-10", ["--weather", gappy]);
        await AssertWrongAsync("Allowed: winters without gaps.", ["--weather", gappy]);
    }

    [Fact]
    public async Task Plan_OnATypicalYear_RunsItsWinterOverTheTurnOfTheYear()
    {
        string typical = Write("typical.epw", TypicalYear());
        CommandLine run = await CommandLine.RunAsync("plan", "--weather", typical, "--seasons", "1", "--days", "90", "--json");
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("\"winters\":[{\"file\":\"typical.epw\"", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_OnATypicalYearWithAGap_IsToldSoWithCodeTwo()
    {
        string[] rows = TypicalYear().Split('\n');
        string gappy = Write("gappy.epw", string.Join('\n', rows.Where((_, i) => i != 8 + 1000)));
        await AssertWrongAsync("Allowed: a typical year without gaps.", ["--weather", gappy]);
    }

    private static async Task AssertWrongAsync(string words, IEnumerable<string> args)
    {
        CommandLine run = await CommandLine.RunAsync(["plan", .. args]);
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    // Months from several years, as typical years are; one of them a leap year without its 29 February.
    private static string TypicalYear()
    {
        const string header =
            "LOCATION,Alder Bank,-,-,made for a test,0,44.5,-72.5,-5.0,250\n"
            + "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\n"
            + "COMMENTS 1,-\nCOMMENTS 2,-\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n";
        return header + string.Join('\n', Enumerable.Range(0, 8760).Select(i =>
        {
            DateTime hour = new DateTime(2001, 1, 1).AddHours(i);
            int year = hour.Month == 2 ? 1996 : 1990 + hour.Month;
            double outside = 9 - (14 * Math.Cos(2 * Math.PI * (i - 500) / 8760.0));
            string t = outside.ToString("F1", CultureInfo.InvariantCulture);
            return $"{year},{hour.Month},{hour.Day},{hour.Hour + 1},60,A7,{t},-5.0,70,98500,0,0,300,{(hour.Hour is > 8 and < 17 ? 100 : 0)},0,0,0,0,0,0,180,2.5";
        }));
    }

    private string Write(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
