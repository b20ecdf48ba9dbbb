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
}
