using System.Net;
using System.Text.Json;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Queries;

public class SamplesApiTests
{
    [Fact]
    public async Task Samples_SeveralSeries_AreAskedOfTheRecordAsGiven()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement answer = await host.GetAsync("/api/samples?channel=heapCore,want&channel=HOUSE&from=2013-01-27T00:00:00Z&to=1359331200000&step=10%20min");

        Assert.Equal(600, answer.GetProperty("stepSeconds").GetDouble());
        Assert.Equal(["heapCore", "want", "house"], answer.GetProperty("series").EnumerateArray().Select(one => one.GetProperty("name").GetString()));
        Assert.Equal(["°C", "W", "°C"], answer.GetProperty("series").EnumerateArray().Select(one => one.GetProperty("unit").GetString()));
        Assert.All(host.Record.Asked, asked => Assert.Equal((1359244800000, 1359331200000, 600_000), (asked.From, asked.To, asked.Step)));
        JsonElement point = answer.GetProperty("series")[0].GetProperty("points")[0];
        Assert.Equal(1359244800000, point[0].GetInt64());
        Assert.True(point[1].GetDouble() < point[2].GetDouble());
        Assert.Contains(
            answer.GetProperty("series")[0].GetProperty("points").EnumerateArray(),
            gap => gap[2].ValueKind == JsonValueKind.Null && gap[4].GetInt32() == 0);
    }

    [Fact]
    public async Task Samples_ByColumns_AreThePointsRounded()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        const string Question = "/api/samples?channel=heapCore,want&from=2013-01-27T00:00:00Z&to=1359331200000&step=10%20min";

        JsonElement[] points = [.. (await host.GetAsync(Question)).GetProperty("series").EnumerateArray()];
        JsonElement[] columns = [.. (await host.GetAsync(Question + "&format=columns&digits=2")).GetProperty("series").EnumerateArray()];

        Assert.Equal(JsonValueKind.Null, columns[1].GetProperty("utcMs").ValueKind);
        for (int series = 0; series < 2; series++)
        {
            JsonElement[] own = [.. points[series].GetProperty("points").EnumerateArray()];
            Assert.Equal(points[series].GetProperty("unit").GetString(), columns[series].GetProperty("unit").GetString());
            Assert.Equal(own.Select(point => point[0].GetInt64()), columns[0].GetProperty("utcMs").EnumerateArray().Select(one => one.GetInt64()));
            (string Name, int At)[] kinds = [("least", 1), ("mean", 2), ("most", 3)];
            Assert.All(kinds, kind => Assert.Equal(
                own.Select(point => Value(point[kind.At]) is { } value ? Math.Round(value, 2) : (double?)null),
                columns[series].GetProperty(kind.Name).EnumerateArray().Select(Value)));
        }
    }

    private static double? Value(JsonElement number) => number.ValueKind == JsonValueKind.Null ? null : number.GetDouble();

    [Theory]
    [InlineData("channel=", "channel")]
    [InlineData("channel=cellar", "channel")]
    [InlineData("channel=house&from=yesterday", "from")]
    [InlineData("channel=house&to=2013-13-01", "to")]
    [InlineData("channel=house&from=2013-01-28T00:00:00Z&to=2013-01-27T00:00:00Z", "from")]
    [InlineData("channel=house&step=fast", "step")]
    [InlineData("channel=house&step=-5", "step")]
    [InlineData("channel=house&step=1s&from=0&to=1359244800000", "step")]
    [InlineData("channel=house&format=pdf", "format")]
    [InlineData("channel=house&digits=10", "digits")]
    [InlineData("channel=house&digits=-1", "digits")]
    [InlineData("channel=house&format=columns&digits=few", "digits")]
    public async Task Samples_WrongField_IsNamedWithGivenAndAllowed(string query, string field)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/samples?{query}");
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, problem.GetProperty("field").GetString());
        Assert.NotEmpty(problem.GetProperty("given").GetString()!);
        Assert.NotEmpty(problem.GetProperty("allowed").GetString()!);
    }

    [Fact]
    public async Task Samples_UnknownChannel_ListsTheKnown()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync("/api/samples?channel=cellar");

        string text = await answer.Content.ReadAsStringAsync();
        Assert.Contains("heapTurns", text);
        Assert.Contains("means", text);
    }

    [Fact]
    public async Task Samples_AsCsv_HasAHeadAndARowABucket()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync(
            "/api/samples?channel=house,pumpDuty&from=2013-01-27T00:00:00Z&to=2013-01-27T03:00:00Z&step=1h&format=csv");

        string[] lines = (await answer.Content.ReadAsStringAsync()).Split("\r\n");
        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("localTime,utcMs,house (°C),pumpDuty", lines[0]);
        Assert.StartsWith("2013-01-26T19:00:00-05:00,1359244800000,8.4", lines[1]);
        Assert.Equal(5, lines.Length);
    }

    [Fact]
    public async Task Samples_AsCsvInAmericanUnits_AreReadAsThePageShowsThem()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        const string Asked = "/api/samples?channel=house,grant,flow,pumpPower,pumpDuty&from=2013-01-27T00:00:00Z&to=2013-01-27T01:00:00Z&step=1h&format=csv";

        string[][] si = Cells(await host.Client.GetStringAsync(Asked));
        string[][] metric = Cells(await host.Client.GetStringAsync(Asked + "&units=metric"));
        string[][] american = Cells(await host.Client.GetStringAsync(Asked + "&units=american"));

        Assert.Equal(["house (°C)", "grant (W)", "flow (L/min)", "pumpPower (W)", "pumpDuty"], si[0][2..]);
        Assert.Equal(si, metric);
        Assert.Equal(["house (°F)", "grant (BTU/h)", "flow (gal/min)", "pumpPower (W)", "pumpDuty"], american[0][2..]);
        double[] before = [.. si[1][2..].Select(Number)];
        double[] after = [.. american[1][2..].Select(Number)];
        Assert.Equal((before[0] * 1.8) + 32, after[0], 3);
        // NIST SP 811 (2008), appendix B.8 (from memory).
        Assert.Equal(before[1] / 0.2930711, after[1], 2);
        Assert.Equal(before[2] / 3.785412, after[2], 3);
        Assert.Equal(before[3..], after[3..]);
    }

    [Theory]
    [InlineData("format=csv&units=kelvin", "units", "metric, american")]
    [InlineData("format=json&units=american", "units", "csv")]
    [InlineData("units=american", "units", "csv")]
    public async Task Samples_InUnitsThatAreNotToBeHad_AreRefused(string asked, string field, string allowed)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync("/api/samples?channel=house&" + asked);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.Contains($"\"field\":\"{field}\"", text);
        Assert.Contains(allowed, text);
    }

    private static string[][] Cells(string csv) => [.. csv.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(','))];

    private static double Number(string cell) => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture);
}
