using System.Net;
using System.Net.ServerSentEvents;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using PileController.Access;
using PileController.Control.Decisions;
using PileController.Panel.Guard;
using PileController.Tests.Panel.Guard;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Live;

public class StreamApiTests
{
    private const string Passphrase = "warm chips in january";

    [Fact]
    public async Task Stream_Open_SendsTicksWithTheSequenceAsId()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        await using Stream stream = await host.Client.GetStreamAsync("/api/stream");
        List<SseItem<string>> items = [];

        await foreach (SseItem<string> item in SseParser.Create(stream).EnumerateAsync())
        {
            items.Add(item);
            if (items.Count == 3)
            {
                break;
            }
        }

        Assert.All(items, item =>
        {
            Assert.Equal("now", item.EventType);
            Assert.Equal(item.EventId, JsonDocument.Parse(item.Data).RootElement.GetProperty("sequence").GetInt64().ToString());
        });
        Assert.Equal(items.Select(item => long.Parse(item.EventId!)).Order().Distinct(), items.Select(item => long.Parse(item.EventId!)));
    }

    [Fact]
    public async Task Stream_OpenedAgain_SendsWhatWasMissedInOrder()
    {
        // Slow ticks, so that what is missed is kept still on the slowest machine.
        await using PanelHost host = await PanelHost.StartAsync(speed: 20);
        long last = host.Feed.Latest!.Sequence;
        await host.NextTickAsync();
        await host.NextTickAsync();

        List<SseItem<string>> items = await OpenAsync(host, $"{last}", 4);

        Assert.All(items, item => Assert.Equal("now", item.EventType));
        Assert.Equal([last + 1, last + 2, last + 3, last + 4], items.Select(item => long.Parse(item.EventId!)));
        Assert.Equal(items.Select(item => item.EventId), items.Select(item => $"{Told(item, "sequence").GetInt64()}"));

        // The page must not take the past for the present.
        Assert.True(Told(items[0], "newsAgeSeconds").GetDouble() > Told(items[2], "newsAgeSeconds").GetDouble());
    }

    [Fact]
    public async Task Stream_OpenedAgainWithNothingMissed_GoesOnWithTheNext()
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 20);
        long last = host.Feed.Latest!.Sequence;

        Assert.Equal($"{last + 1}", Assert.Single(await OpenAsync(host, $"{last}", 1)).EventId);
    }

    [Fact]
    public async Task Stream_OpenedAgainAfterMoreThanIsKept_SaysSoAndGoesOnWithTheNewest()
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 2000);
        while (host.Feed.Latest!.Sequence < 40)
        {
            await host.NextTickAsync();
        }

        List<SseItem<string>> items = await OpenAsync(host, "3", 2);

        Assert.Equal(["missed", "now"], items.Select(item => item.EventType));
        Assert.Equal(3, Told(items[0], "after").GetInt64());
        Assert.InRange(Told(items[0], "before").GetInt64(), 40, Told(items[1], "sequence").GetInt64());
    }

    [Fact]
    public async Task Stream_OpenedAgainWithANumberYetToCome_SaysSoAndGoesOnWithTheNewest()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        List<SseItem<string>> items = await OpenAsync(host, "9000000000000000000", 3);

        Assert.Equal(["missed", "now", "now"], items.Select(item => item.EventType));
        Assert.Equal(JsonValueKind.Null, Told(items[0], "after").ValueKind);
        Assert.True(long.Parse(items[2].EventId!) > long.Parse(items[1].EventId!));
    }

    [Theory]
    [InlineData("")]
    [InlineData("x")]
    [InlineData("-3")]
    [InlineData("1e3")]
    [InlineData("99999999999999999999")]
    [InlineData("1, 2")]
    public async Task Stream_OpenedAgainWithWhatIsNoNumberOfATick_BeginsAnew(string id)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        await host.NextTickAsync();
        long newest = host.Feed.Latest!.Sequence;

        SseItem<string> first = Assert.Single(await OpenAsync(host, id, 1));

        Assert.Equal("now", first.EventType);
        Assert.True(long.Parse(first.EventId!) >= newest);
    }

    [Fact]
    public async Task Stream_Open_DoesNotHoldUpTheStop()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        await using Stream stream = await host.Client.GetStreamAsync("/api/stream");
        Task drained = stream.CopyToAsync(Stream.Null);

        await host.StopAsync();

        // The server ended the stream itself: a stop that has to break it off would throw here.
        await drained;
        Assert.Equal("safe", host.Rig.Calls.Last());
        Assert.Equal(Outputs.Safe, host.Rig.Told);
    }

    [Fact]
    public async Task Stream_WhoseKeyIsTakenBack_EndsByItself()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        string key = host.Access.Keys.Make("its", Scope.Look, "Robin")!.Value.Secret;
        Task<(int Status, string Body)> open = host.GetFromAfarAsync("/api/stream", key);
        await host.NextTickAsync();
        Assert.False(open.IsCompleted);

        Assert.True(host.Access.Keys.Revoke("its"));

        (int status, string told) = await open.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Equal(200, status);
        Assert.Contains("event: now", told, StringComparison.Ordinal);
        Assert.Equal(401, (await host.GetFromAfarAsync("/api/stream", key)).Status);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Looking_OfASessionThatIsOver_EndsWhereItIsNotOpenToAll(bool lookOnLan)
    {
        await using PanelHost host = await PanelHost.StartAsync(true, 60, Passphrase, access => access with { LookOnLan = lookOnLan });
        (string cookie, _) = await SessionApiTests.SignInAsync(host);
        string secret = Uri.UnescapeDataString(cookie.Split('=', 2)[1]);
        Session session = host.Access.Find(secret)!;
        Caller caller = new(Scope.Steer, "session", session.Name, session, secret, session.Mark);
        DefaultHttpContext context = new();
        context.Connection.RemoteIpAddress = IPAddress.Parse("192.168.1.7");
        Assert.True(EntryGate.MayStillLook(context, caller, host.Access));

        host.Access.Keys.Close(session);

        Assert.Equal(lookOnLan, EntryGate.MayStillLook(context, caller, host.Access));
        context.Connection.RemoteIpAddress = IPAddress.Loopback;
        Assert.True(EntryGate.MayStillLook(context, caller, host.Access));
    }

    private static JsonElement Told(SseItem<string> item, string field) => JsonDocument.Parse(item.Data).RootElement.GetProperty(field);

    private static async Task<List<SseItem<string>>> OpenAsync(PanelHost host, string lastEventId, int count)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, "/api/stream");
        request.Headers.TryAddWithoutValidation("Last-Event-ID", lastEventId);
        using HttpResponseMessage answer = await host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        await using Stream stream = await answer.EnsureSuccessStatusCode().Content.ReadAsStreamAsync();
        List<SseItem<string>> items = [];
        await foreach (SseItem<string> item in SseParser.Create(stream).EnumerateAsync())
        {
            items.Add(item);
            if (items.Count == count)
            {
                break;
            }
        }

        return items;
    }
}
