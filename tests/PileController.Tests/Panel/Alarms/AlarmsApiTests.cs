using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Alarms;

public sealed class AlarmsApiTests : IAsyncLifetime
{
    private PanelHost _host = null!;

    public async Task InitializeAsync()
    {
        // The made-up control says from the first tick that tonight is poor, and at the next that the pump moves no water.
        _host = await PanelHost.StartAsync(speed: 600);
        _host.Control.Trip = "noFlow";
        await UntilAsync(all => Keys(all, "standing").Contains("noFlow"));
    }

    public async Task DisposeAsync() => await _host.DisposeAsync();

    [Fact]
    public async Task Get_AlarmsThatStand_TellsTheWorstFirstWithAllThatIsNeeded()
    {
        JsonElement all = await _host.GetAsync("/api/alarms");
        JsonElement first = all.GetProperty("standing")[0];
        Assert.Equal("noFlow", first.GetProperty("key").GetString());
        Assert.Equal("high", first.GetProperty("priority").GetString());
        Assert.True(first.GetProperty("firstUp").GetBoolean());
        Assert.False(first.GetProperty("seen").GetBoolean());
        Assert.EndsWith("Z", first.GetProperty("sinceUtc").GetString(), StringComparison.Ordinal);
        Assert.All((string[])["name", "cause", "consequence", "action"], name => Assert.NotEmpty(first.GetProperty(name).GetString()!));
        Assert.Contains("tonightPoor", Keys(all, "standing"));
        Assert.Equal("raised", all.GetProperty("recent")[0].GetProperty("event").GetString());
    }

    [Fact]
    public async Task Now_AlarmsThatStand_CountsThoseNobodyHasSeenAndTellsTheWorst()
    {
        JsonElement now = await _host.GetAsync("/api/now");
        Assert.True(now.GetProperty("alarms").GetProperty("unseen").GetInt32() >= 2);
        Assert.True(now.GetProperty("alarms").GetProperty("standing").GetInt32() >= 2);
        Assert.Equal("high", now.GetProperty("alarms").GetProperty("worst").GetString());
    }

    [Fact]
    public async Task Seen_AnAlarm_IsNotedWithItsPersonOnceOnly()
    {
        HttpResponseMessage answer = await Post("seen", new { key = "noFlow", who = "Robin" });
        JsonElement one = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("standing").EnumerateArray().First(row => row.GetProperty("key").GetString() == "noFlow");
        Assert.Equal((true, "Robin"), (one.GetProperty("seen").GetBoolean(), one.GetProperty("seenBy").GetString()));
        Assert.Equal(HttpStatusCode.Conflict, (await Post("seen", new { key = "noFlow", who = "Robin" })).StatusCode);
    }

    [Fact]
    public async Task Clear_ATrip_TellsWhoEndedItsAlarm()
    {
        using HttpResponseMessage answer = await _host.Client.PostAsJsonAsync("/api/trips/noFlow/clear", new { who = "Robin" });
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);

        JsonElement all = await UntilAsync(one => one.GetProperty("recent").EnumerateArray().Any(line => line.GetProperty("event").GetString() == "returned"));

        JsonElement line = all.GetProperty("recent").EnumerateArray().First(one => one.GetProperty("event").GetString() == "returned");
        Assert.Equal(("noFlow", "Robin"), (line.GetProperty("key").GetString(), line.GetProperty("who").GetString()));
        JsonElement card = all.GetProperty("standing").EnumerateArray().First(one => one.GetProperty("key").GetString() == "noFlow");
        Assert.Equal("Robin", card.GetProperty("clearedBy").GetString());
    }

    [Fact]
    public async Task Shelve_AnAlarm_TakesItFromTheListAndBack()
    {
        HttpResponseMessage answer = await Post("shelve", new { key = "tonightPoor", minutes = 600, who = "Robin" });
        JsonElement all = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.DoesNotContain("tonightPoor", Keys(all, "standing"));
        JsonElement shelved = Assert.Single(all.GetProperty("shelved").EnumerateArray());
        Assert.Equal("Robin", shelved.GetProperty("shelvedBy").GetString());
        Assert.NotNull(shelved.GetProperty("shelvedUntilUtc").GetString());
        all = await (await Post("unshelve", new { key = "tonightPoor", who = "Robin" })).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Contains("tonightPoor", Keys(all, "standing"));
        Assert.Equal(HttpStatusCode.Conflict, (await Post("unshelve", new { key = "tonightPoor", who = "Robin" })).StatusCode);
    }

    [Fact]
    public async Task Shelve_AnAlarmThatProtectsPeople_ForMoreThanHalfAnHourIsRefusedWithTheReason()
    {
        HttpResponseMessage answer = await Post("shelve", new { key = "heapFire", minutes = 31, who = "Robin" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("protects people", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await Post("shelve", new { key = "heapFire", minutes = 30, who = "Robin" })).StatusCode);
    }

    [Theory]
    [InlineData("seen", """{ "who": "Robin" }""", "key")]
    [InlineData("seen", """{ "key": "nothing", "who": "Robin" }""", "key")]
    [InlineData("seen", """{ "key": "noFlow" }""", "who")]
    [InlineData("seen", """{ "key": "noFlow", "who": "Robin", "why": "x" }""", "why")]
    [InlineData("shelve", """{ "key": "noFlow", "who": "Robin" }""", "minutes")]
    [InlineData("shelve", """{ "key": "noFlow", "who": "Robin", "minutes": 0 }""", "minutes")]
    [InlineData("shelve", """{ "key": "noFlow", "who": "Robin", "minutes": 1441 }""", "minutes")]
    [InlineData("unshelve", """{ "key": 3, "who": "Robin" }""", "key")]
    public async Task Post_AWrongField_IsNamed(string deed, string body, string field)
    {
        using StringContent content = new(body, System.Text.Encoding.UTF8, "application/json");
        HttpResponseMessage answer = await _host.Client.PostAsync($"/api/alarms/{deed}", content);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("field").GetString());
    }

    private static List<string?> Keys(JsonElement all, string list) =>
        [.. all.GetProperty(list).EnumerateArray().Select(row => row.GetProperty("key").GetString())];

    private Task<HttpResponseMessage> Post(string deed, object body) => _host.Client.PostAsJsonAsync($"/api/alarms/{deed}", body);

    private async Task<JsonElement> UntilAsync(Func<JsonElement, bool> holds)
    {
        JsonElement all = await _host.GetAsync("/api/alarms");
        while (!holds(all))
        {
            await _host.NextTickAsync();
            all = await _host.GetAsync("/api/alarms");
        }

        return all;
    }
}
