using System.Text.Json;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using PileController.Alarms;
using PileController.Alarms.Push;
using PileController.Control;
using PileController.Service;
using PileController.Tests.Service;

namespace PileController.Tests.Alarms.Push;

public sealed class HeartbeatTests
{
    private readonly FakeTimeProvider _time = new();

    [Fact]
    public async Task Heartbeat_TicksOnTime_IsSentAndStaysAwayWhenTicksDo()
    {
        await using LocalHttp server = await LocalHttp.StartAsync();
        PanelFeed feed = new(_time);
        AlarmTable table = new([Bench.Row("a", _ => false)]);
        AlarmDesk desk = new(table, AlarmState.Fresh(table));
        using Heartbeat heartbeat = new(
            new WebhookSink(server.Address), TimeSpan.FromSeconds(60), "Alder Bank", new Punctuality(TimeSpan.FromSeconds(10)), feed, desk, _time,
            new PushTroubles(desk), NullLogger<Heartbeat>.Instance);
        await heartbeat.StartAsync(CancellationToken.None);
        Tell(feed, 1);
        await LoopBench.UntilAsync(() => server.Bodies.Count == 1);

        // Sixty beats with a tick each, then the loop hangs.
        for (int i = 0; i < 5; i++)
        {
            int before = server.Bodies.Count;
            Tell(feed, 2 + i);
            await LoopBench.UntilAsync(() =>
            {
                if (server.Bodies.Count == before)
                {
                    Tell(feed, 2 + i);
                    _time.Advance(TimeSpan.FromSeconds(10));
                }

                return server.Bodies.Count > before;
            });
        }

        _time.Advance(TimeSpan.FromSeconds(40));
        int last = server.Bodies.Count;
        for (int i = 0; i < 100; i++)
        {
            _time.Advance(TimeSpan.FromSeconds(60));
            await Task.Yield();
        }

        // A beat that was wrongly sent would arrive before one that is rightly sent.
        Tell(feed, 100);
        await LoopBench.UntilAsync(() =>
        {
            if (server.Bodies.Count == last)
            {
                Tell(feed, 100);
                _time.Advance(TimeSpan.FromSeconds(10));
            }

            return server.Bodies.Count > last;
        });
        JsonElement[] bodies = [.. server.Bodies];
        Assert.Equal(100, bodies[last].GetProperty("tick").GetInt64());
        Assert.Equal("Alder Bank", bodies[0].GetProperty("holding").GetString());
        await heartbeat.StopAsync(CancellationToken.None);
    }

    private static void Tell(PanelFeed feed, long sequence)
    {
        AlarmFacts sound = Bench.Sound(sequence);
        feed.Publish(new TickNews(sound.Decision! with { Sequence = sequence }, sound.Raw, sound.Record, Memory.Fresh));
    }
}
