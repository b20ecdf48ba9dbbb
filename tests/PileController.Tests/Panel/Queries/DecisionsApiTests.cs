using System.Net;
using System.Text.Json;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Queries;

public class DecisionsApiTests
{
    [Fact]
    public async Task Decisions_OfOneKind_AreNewestFirstAndOfThatKind()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement answer = await host.GetAsync("/api/decisions?kind=trip&limit=5");

        JsonElement[] lines = [.. answer.GetProperty("decisions").EnumerateArray()];
        Assert.Equal(5, lines.Length);
        Assert.True(answer.GetProperty("more").GetBoolean());
        Assert.All(lines, line => Assert.Equal("trip", Assert.Single(line.GetProperty("kinds").EnumerateArray()).GetString()));
        Assert.Equal(lines.OrderByDescending(line => line.GetProperty("utcMs").GetInt64()), lines);
    }

    [Fact]
    public async Task Decisions_ByModeCurbAndText_AreThoseOnly()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement[] held = await LinesAsync(host, "mode=byHand&text=ROBIN");
        Assert.NotEmpty(held);
        Assert.All(held, line => Assert.Equal("byHand", line.GetProperty("mode").GetString()));
        JsonElement[] floor = await LinesAsync(host, "curb=floor");
        Assert.NotEmpty(floor);
        Assert.All(floor, line => Assert.Equal("floor", line.GetProperty("curb").GetString()));
        Assert.Empty(await LinesAsync(host, "mode=byHand&curb=floor"));
        Assert.Empty(await LinesAsync(host, "text=nowhere"));
    }

    [Theory]
    [InlineData("kind=weather", "kind")]
    [InlineData("mode=asleep", "mode")]
    [InlineData("curb=stone", "curb")]
    [InlineData("limit=0", "limit")]
    [InlineData("limit=1001", "limit")]
    [InlineData("limit=many", "limit")]
    public async Task Decisions_WrongField_IsNamed(string query, string field)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/decisions?{query}");
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, problem.GetProperty("field").GetString());
    }

    private static async Task<JsonElement[]> LinesAsync(PanelHost host, string query) =>
        [.. (await host.GetAsync($"/api/decisions?{query}")).GetProperty("decisions").EnumerateArray()];
}
