using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PileController.Access;
using PileController.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Queries;

public class DecisionApiTests
{
    private const string Passphrase = "warm chips in january";

    [Fact]
    public async Task Get_ATickThatIsKept_TellsAllItKnew()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        TickNews news = await host.NextTickAsync();

        JsonElement body = await host.GetAsync($"/api/decisions/{news.Sequence}");

        JsonElement decision = body.GetProperty("decision");
        Assert.Equal(news.Sequence, decision.GetProperty("sequence").GetInt64());
        Assert.NotEmpty(decision.GetProperty("readings").EnumerateArray());
        Assert.Equal(MadeUp.Interlocks.Count, decision.GetProperty("interlocks").GetArrayLength());
        Assert.All(body.GetProperty("whatIfs").EnumerateArray(), one => Assert.NotEmpty(one.GetProperty("what").GetString()!));
    }

    [Fact]
    public async Task Get_ATickAtWhichSomebodyAskedForSomething_TellsWhoAndFromWhere()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        await host.SignInAsync(Passphrase, "Kim");
        string secret = host.Access.Keys.Make("shed tablet", Scope.Steer, "Robin")!.Value.Secret;
        using HttpResponseMessage byHand = await host.Client.PostAsJsonAsync("/api/hand", new { actuator = "pump", value = 1, minutes = 10, who = "Robin" });
        using HttpRequestMessage byKey = new(HttpMethod.Post, "/api/servicing");
        byKey.Headers.Authorization = new("Bearer", secret);
        using HttpClient script = new() { BaseAddress = host.Client.BaseAddress };
        using HttpResponseMessage servicing = await script.SendAsync(byKey);
        Assert.True(byHand.IsSuccessStatusCode && servicing.IsSuccessStatusCode);
        await host.NextTickAsync();

        List<string> askers = [];
        foreach (HttpResponseMessage accepted in (HttpResponseMessage[])[byHand, servicing])
        {
            long sequence = (await accepted.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("effectiveSequence").GetInt64();
            JsonElement body = await host.GetAsync($"/api/decisions/{sequence}");
            askers.AddRange(body.GetProperty("askers").EnumerateArray().Select(one => $"{one.GetProperty("name")}, {one.GetProperty("by")}, {one.GetProperty("from")}"));
        }

        Assert.Equal(["Kim, session, this machine", "shed tablet, token, this machine"], askers.Distinct());
    }

    [Theory]
    [InlineData("999999999", HttpStatusCode.NotFound)]
    [InlineData("-1", HttpStatusCode.NotFound)]
    [InlineData("x", HttpStatusCode.NotFound)]
    public async Task Get_ATickThatIsNotKept_SaysSo(string sequence, HttpStatusCode expected)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/decisions/{sequence}");

        Assert.Equal(expected, answer.StatusCode);
    }
}
