using System.Net.ServerSentEvents;
using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Live;

public class StreamApiTests
{
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
}
