using System.Net;
using System.Text.Json;
using PileController.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Queries;

public class DecisionApiTests
{
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
