using System.Globalization;
using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Access;
using PileController.Panel.Guard;
using PileController.Service;

namespace PileController.Panel.Live;

/// <summary>
/// <c>GET /api/stream</c>: one event a tick, the newest first when the watcher is slow. Who comes back with
/// <c>Last-Event-ID</c> is told the ticks missed meanwhile, or that some are lost (an event <c>missed</c>) and the newest.
/// </summary>
internal static class StreamApi
{
    private const string LastEventId = "Last-Event-ID";

    // Enough for the eye; at high demo speeds ticks come far faster.
    private static readonly TimeSpan LeastGap = TimeSpan.FromMilliseconds(250);

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/stream", Get);

    private static ServerSentEventsResult<string> Get(HttpContext context, NowText text, PanelFeed feed, AccessDesk desk, IHostApplicationLifetime lifetime)
    {
        Caller caller = Told.Of(context).Caller;
        return TypedResults.ServerSentEvents(EventsAsync(
            text, feed, context.Request.Headers[LastEventId], () => EntryGate.MayStillLook(context, caller, desk),
            lifetime.ApplicationStopping, context.RequestAborted));
    }

    private static async IAsyncEnumerable<SseItem<string>> EventsAsync(
        NowText text, PanelFeed feed, string? lastEventId, Func<bool> mayStillLook, CancellationToken stopping,
        [EnumeratorCancellation] CancellationToken aborted)
    {
        // An open stream would otherwise hold up the stop of the whole service, and so the safe outputs.
        using CancellationTokenSource ended = CancellationTokenSource.CreateLinkedTokenSource(stopping, aborted);
        Resumption from = Resumption.Of(lastEventId, feed.Kept);
        long sequence = from.After;

        // Without a number of its own: whoever is cut off right behind it asks for the same again.
        if (from.Lost is { } lost)
        {
            yield return new SseItem<string>(JsonSerializer.Serialize(lost, JsonSerializerOptions.Web), "missed");
        }

        foreach (TickNews news in from.Missed)
        {
            yield return EventOf(text, news);
        }

        while (!ended.IsCancellationRequested)
        {
            TickNews news;
            try
            {
                news = await feed.AfterAsync(sequence, ended.Token);
            }
            catch (OperationCanceledException)
            {
                yield break;
            }

            // Signed out, or the key taken back: what was opened before shall not go on.
            if (!mayStillLook())
            {
                yield break;
            }

            sequence = news.Sequence;
            yield return EventOf(text, news);
            await Task.Delay(LeastGap, ended.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private static SseItem<string> EventOf(NowText text, TickNews news) => new(text.Of(news), "now")
    {
        EventId = news.Sequence.ToString(CultureInfo.InvariantCulture),
        ReconnectionInterval = TimeSpan.FromSeconds(2),
    };
}
