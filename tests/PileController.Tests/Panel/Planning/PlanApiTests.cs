using System.Net;
using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Planning;

public class PlanApiTests
{
    [Fact]
    public async Task Plan_NothingChanged_TellsTheHeapAsBuilt()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement plan = await host.GetAsync("/api/plan");

        Assert.Equal("2025-11-01", plan.GetProperty("start").GetString());
        Assert.Equal(150, plan.GetProperty("days").GetInt32());
        Assert.Equal(0, plan.GetProperty("changed").GetArrayLength());
        Assert.Equal(plan.GetProperty("built").GetRawText(), plan.GetProperty("tried").GetRawText());
        JsonElement sketch = plan.GetProperty("sketch");
        Assert.Equal(120, sketch.GetProperty("coil").GetProperty("lengthM").GetDouble());
        Assert.Equal(21, sketch.GetProperty("heap").GetProperty("weeks").GetArrayLength());
        Assert.Equal(6, sketch.GetProperty("heap").GetProperty("litOnDay").GetDouble());
        Assert.Equal(["heap", "coil", "loop", "air", "house", "advice", "claims", "cautions"], sketch.EnumerateObject().Select(one => one.Name));
        Assert.Equal(
            ["heapRadiusM", "coverM", "radiusM", "lengthM", "turns"],
            plan.GetProperty("limits").EnumerateArray().Select(one => one.GetProperty("field").GetString()));
    }

    [Fact]
    public async Task Plan_TurnsAndRadiusTried_CutsThePipeToFitAndSaysWhatChanged()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement plan = await host.GetAsync("/api/plan?turns=20&radiusM=0.9");

        Assert.Equal(20 * 2 * Math.PI * 0.9, plan.GetProperty("sketch").GetProperty("coil").GetProperty("lengthM").GetDouble(), 9);
        Assert.Equal(0.9, plan.GetProperty("tried").GetProperty("coilRadiusM").GetDouble());
        Assert.Equal(1.0, plan.GetProperty("built").GetProperty("coilRadiusM").GetDouble());
        JsonElement turns = plan.GetProperty("changed").EnumerateArray().Single(one => one.GetProperty("field").GetString() == "turns");
        Assert.Equal(19.0986, turns.GetProperty("built").GetDouble(), 4);
        Assert.Equal(20, turns.GetProperty("tried").GetDouble(), 9);
    }

    [Fact]
    public async Task Plan_WiderHeap_IsMoreOfTheSameStuff()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement plan = await host.GetAsync("/api/plan?heapRadiusM=3.8");

        Assert.Equal(36_000, plan.GetProperty("sketch").GetProperty("heap").GetProperty("wetMassKg").GetDouble(), 6);
    }

    [Theory]
    [InlineData("turns=many", "turns", "many", "one number")]
    [InlineData("turns=", "turns", "nothing", "one number")]
    [InlineData("turns=NaN", "turns", "NaN", "one number")]
    [InlineData("turns=3&turns=4", "turns", "3,4", "one number")]
    [InlineData("turns=-1", "turns", "-1", "0 to 41")]
    [InlineData("turns=43", "turns", "43", "0 to 41")]
    [InlineData("lengthM=1001", "lengthM", "1001", "0 to 1000")]
    [InlineData("lengthM=400", "lengthM", "400", "at most 264 m")]
    [InlineData("radiusM=0.1", "radiusM", "0.1", "0.2 to 6")]
    [InlineData("radiusM=1.9", "radiusM", "1.9", "heap.radius")]
    [InlineData("heapRadiusM=0.4", "heapRadiusM", "0.4", "0.5 to 6")]
    [InlineData("heapRadiusM=0.9", "heapRadiusM", "0.9", "heap.coil.radius")]
    [InlineData("coverM=1.5", "coverM", "1.5", "0 to 1")]
    [InlineData("turns=20&lengthM=100", "lengthM", "beside turns", "one of the two")]
    [InlineData("windings=20", "windings", "this field", "turns")]
    [InlineData("page=a%20b", "page", "this text", "letters and digits")]
    public async Task Plan_WrongField_IsNamedWithWhatIsAllowed(string query, string field, string given, string allowed)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/plan?{query}");
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, problem.GetProperty("field").GetString());
        Assert.Contains(given, problem.GetProperty("given").GetString());
        Assert.Contains(allowed, problem.GetProperty("allowed").GetString());
        Assert.Equal(0, host.Sketch.Made);
    }

    [Theory]
    [InlineData("", "1.00 m", "Alder Bank")]
    [InlineData("?radiusM=0.8", "0.80 m", "Alder Bank")]
    [InlineData("?radiusM=0.8&units=american", "ft", "Alder Bank")]
    public async Task Sheet_OfWhatIsTried_IsOnePageWithoutStyleOrScriptInIt(string query, string length, string name)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/plan/sheet{query}");
        string html = await answer.Content.ReadAsStringAsync();

        Assert.Equal("text/html; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.Contains("default-src 'none'", answer.Headers.GetValues("Content-Security-Policy").Single());
        Assert.Contains(length, html);
        Assert.Contains(name, html);
        Assert.DoesNotContain("<style", html);
        Assert.DoesNotContain(" style=", html);
        Assert.DoesNotContain("<script", html);
    }

    [Theory]
    [InlineData("units=cubits", "units")]
    [InlineData("turns=99", "turns")]
    public async Task Sheet_WrongField_IsNamed(string query, string field)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/plan/sheet?{query}");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains($"\"field\":\"{field}\"", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Plan_FromAnotherSite_IsTurnedAway()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpRequestMessage foreign = new(HttpMethod.Get, "/api/plan");
        foreign.Headers.Add("Origin", "http://elsewhere.example");
        using HttpRequestMessage renamed = new(HttpMethod.Get, "/api/plan");
        renamed.Headers.Host = "elsewhere.example";

        using HttpResponseMessage first = await host.Client.SendAsync(foreign);
        using HttpResponseMessage second = await host.Client.SendAsync(renamed);

        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.Forbidden), (first.StatusCode, second.StatusCode));
        Assert.Equal(0, host.Sketch.Made);
    }

    [Fact]
    public async Task Plan_AnyAnswer_LeavesTheRunningSettingsAlone()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        string before = (await host.GetAsync("/api/now")).GetProperty("heap").GetRawText();

        await host.GetAsync("/api/plan?turns=30&radiusM=0.8&heapRadiusM=2.5&coverM=0.3");
        await host.NextTickAsync();

        Assert.Equal(before, (await host.GetAsync("/api/now")).GetProperty("heap").GetRawText());

        // What the shell says of itself, as of a late tick on a busy machine, is nobody's command.
        Assert.All(host.Control.Seen, seen => Assert.DoesNotContain(seen, command => command is not ReportTick));
    }
}
