using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Commands;

public class ForecastApiTests
{
    private const string Sound = "{\"fromUtc\":\"2013-01-28T05:00:00Z\",\"outsideC\":[1,2,3],\"sunWPerM2\":[0,0,40]}";

    [Fact]
    public async Task Post_OfASoundForecast_ReachesControlAtThePromisedTick()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpResponseMessage answer = await PostAsync(host, Sound);
        long promised = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("effectiveSequence").GetInt64();
        await host.Feed.AfterAsync(promised, CancellationToken.None);

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        TakeForecast taken = Assert.Single(host.Control.Seen.SelectMany(commands => commands).OfType<TakeForecast>());
        Assert.Equal([1, 2, 3], taken.Forecast.OutsideC);
        Assert.Equal([0, 0, 40], taken.Forecast.SunWPerM2!);
        Assert.Equal(PanelHost.Begins.AddMinutes(-10).ToUnixTimeMilliseconds(), taken.Forecast.FromUtcMilliseconds);
    }

    [Theory]
    [InlineData("{\"fromUtc\":\"2013-01-28T05:00:00Z\",\"outsideC\":[1,99]}", "outsideC[1] is 99; allowed is -60 to 60 °C.")]
    [InlineData("{\"fromUtc\":\"2013-01-28T05:00:00Z\",\"outsideC\":[1],\"sunWPerM2\":[1500]}", "sunWPerM2[0] is 1500; allowed is 0 to 1400 W/m².")]
    [InlineData("{\"fromUtc\":\"2013-01-28T05:00:00Z\",\"outsideC\":[1],\"sunWPerM2\":[1,2]}", "sunWPerM2 has 2 hours; allowed are as many as outsideC has, 1, or none at all.")]
    [InlineData("{\"fromUtc\":\"2013-01-28T05:00:00Z\",\"outsideC\":[]}", "outsideC has 0 hours; allowed are 1 to 240.")]
    [InlineData("{\"outsideC\":[1]}", "fromUtc is missing")]
    [InlineData("[1]", "body is a JSON Array")]
    [InlineData("no", "body is text that is no JSON")]
    [InlineData("{\"fromUtc\":\"2012-01-28T05:00:00Z\",\"outsideC\":[1]}", "fromUtc is 2012-01-28T05:00:00Z; allowed is at most 7 days before now")]
    public async Task Post_OfAWrongForecast_IsRefusedWithTheFieldWhatWasGivenAndWhatIsAllowed(string body, string why)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpResponseMessage answer = await PostAsync(host, body);
        string detail = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("detail").GetString()!;

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.StartsWith(why, detail, StringComparison.Ordinal);
        await host.NextTickAsync();
        Assert.DoesNotContain(host.Control.Seen.SelectMany(commands => commands), command => command is TakeForecast);
    }

    [Fact]
    public async Task Get_Tonight_TellsTheNewestStatement()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        JsonElement said = await host.GetAsync("/api/tonight");

        Assert.Equal((4.6, 0.62, true), (said.GetProperty("minimumP50C").GetDouble(), said.GetProperty("chanceOfHolding").GetDouble(), said.GetProperty("poor").GetBoolean()));
        Assert.Equal((5, 900), (said.GetProperty("houseMinimumC").GetDouble(), said.GetProperty("backupWatts").GetDouble()));
        Assert.Equal("2013-01-28T06:00:00-05:00", said.GetProperty("atLocalTime").GetString());
    }

    private static Task<HttpResponseMessage> PostAsync(PanelHost host, string body) =>
        host.Client.PostAsync("/api/forecast", new StringContent(body, Encoding.UTF8, "application/json"));
}
