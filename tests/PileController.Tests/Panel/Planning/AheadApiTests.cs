using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Planning;

public class AheadApiTests
{
    [Fact]
    public async Task Ahead_NeverStarted_IsNone()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement ahead = await host.GetAsync("/api/plan/ahead");

        Assert.Equal("none", ahead.GetProperty("state").GetString());
        Assert.Equal(JsonValueKind.Null, ahead.GetProperty("result").ValueKind);
    }

    [Fact]
    public async Task Ahead_Started_RunsOneSeasonAfterAnotherAndTellsHowFar()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Seasons.Let(1);
        using HttpResponseMessage begun = await host.Client.PostAsJsonAsync("/api/plan/ahead", new { seasons = 4 });
        JsonElement half = await UntilAsync(host, ahead => ahead.GetProperty("share").GetDouble() > 0);
        using HttpResponseMessage second = await host.Client.PostAsJsonAsync("/api/plan/ahead", new { seasons = 2 });
        host.Seasons.Let(3);

        JsonElement done = await UntilAsync(host, ahead => ahead.GetProperty("state").GetString() != "running");

        Assert.Equal((HttpStatusCode.Accepted, HttpStatusCode.Conflict), (begun.StatusCode, second.StatusCode));
        Assert.Equal(("running", 0.25), (half.GetProperty("state").GetString(), half.GetProperty("share").GetDouble()));
        Assert.Equal(("done", 1.0), (done.GetProperty("state").GetString(), done.GetProperty("share").GetDouble()));
        JsonElement result = done.GetProperty("result");
        Assert.Equal(4, result.GetProperty("seasons").GetInt32());
        // Seasons 0 to 3 drew 100, 200, 300 and 400 kWh.
        Assert.Equal(250, result.GetProperty("ahead").GetProperty("drawnKWh").GetProperty("p50").GetDouble(), 9);
        Assert.Equal((4, 1, false), (host.Seasons.Made, host.Seasons.MostRunning, host.Seasons.RanOnPool));
    }

    [Fact]
    public async Task Ahead_GivenUp_EndsAtTheSeasonItIsIn()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Seasons.Let(1);
        await host.Client.PostAsJsonAsync("/api/plan/ahead", new { seasons = 20 });
        await UntilAsync(host, ahead => ahead.GetProperty("share").GetDouble() > 0);

        using HttpResponseMessage answer = await host.Client.DeleteAsync("/api/plan/ahead");

        JsonElement after = await UntilAsync(host, ahead => ahead.GetProperty("state").GetString() != "running");
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Equal("none", after.GetProperty("state").GetString());
        Assert.Equal(1, host.Seasons.Made);
    }

    [Fact]
    public async Task Ahead_ServiceStops_IsCancelled()
    {
        PanelHost host = await PanelHost.StartAsync();
        await host.Client.PostAsJsonAsync("/api/plan/ahead", new { seasons = 20 });
        await host.Seasons.Begun.WaitAsync();

        await host.DisposeAsync();

        await host.Seasons.Cancelled.Task;
        Assert.Equal(0, host.Seasons.Made);
    }

    [Fact]
    public async Task Ahead_SeasonFails_IsToldAndAnotherRunMayStart()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Seasons.Throws = new InvalidOperationException("no winter");
        host.Seasons.Let(1);
        await host.Client.PostAsJsonAsync("/api/plan/ahead", new { seasons = 3 });
        JsonElement failed = await UntilAsync(host, ahead => ahead.GetProperty("state").GetString() != "running");

        using HttpResponseMessage again = await host.Client.PostAsJsonAsync("/api/plan/ahead", new { seasons = 3 });

        Assert.Equal(("none", "no winter"), (failed.GetProperty("state").GetString(), failed.GetProperty("fault").GetString()));
        Assert.Equal(HttpStatusCode.Accepted, again.StatusCode);
    }

    [Theory]
    [InlineData("{}", "seasons", "nothing")]
    [InlineData("{\"seasons\":0}", "seasons", "0")]
    [InlineData("{\"seasons\":201}", "seasons", "201")]
    [InlineData("{\"seasons\":2.5}", "seasons", "2.5")]
    [InlineData("{\"seasons\":\"many\"}", "seasons", "many")]
    [InlineData("{\"seasons\":2,\"seed\":4}", "seed", "this field")]
    public async Task Ahead_WrongField_IsNamed(string body, string field, string given)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using StringContent content = new(body, System.Text.Encoding.UTF8, "application/json");

        using HttpResponseMessage answer = await host.Client.PostAsync("/api/plan/ahead", content);
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, problem.GetProperty("field").GetString());
        Assert.Contains(given, problem.GetProperty("given").GetString());
        Assert.Equal("none", (await host.GetAsync("/api/plan/ahead")).GetProperty("state").GetString());
    }

    [Fact]
    public async Task Ahead_StartedFromAnotherSite_IsTurnedAway()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpRequestMessage foreign = new(HttpMethod.Post, "/api/plan/ahead") { Content = JsonContent.Create(new { seasons = 2 }) };
        foreign.Headers.Add("Sec-Fetch-Site", "cross-site");

        using HttpResponseMessage answer = await host.Client.SendAsync(foreign);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal("none", (await host.GetAsync("/api/plan/ahead")).GetProperty("state").GetString());
    }

    private static async Task<JsonElement> UntilAsync(PanelHost host, Func<JsonElement, bool> fits)
    {
        using CancellationTokenSource patience = new(TimeSpan.FromSeconds(60));
        while (true)
        {
            JsonElement ahead = await host.GetAsync("/api/plan/ahead");
            if (fits(ahead))
            {
                return ahead;
            }

            await Task.Delay(20, patience.Token);
        }
    }
}
