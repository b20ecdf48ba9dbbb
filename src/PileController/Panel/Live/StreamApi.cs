using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Access;
using PileController.Panel.Guard;
using PileController.Service;

namespace PileController.Panel.Live;

/// <summary><c>GET /api/stream</c>: one event a tick, the newest first when the watcher is slow.</summary>
internal static class StreamApi
{
    // Enough for the eye; at high demo speeds ticks come far faster.
    private static readonly TimeSpan LeastGap = TimeSpan.FromMilliseconds(250);

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/stream", Get);

    private static ServerSentEventsResult<string> Get(HttpContext context, NowText text, PanelFeed feed, AccessDesk desk, IHostApplicationLifetime lifetime)
    {
        Caller caller = Told.Of(context).Caller;
        return TypedResults.ServerSentEvents(
            EventsAsync(text, feed, () => EntryGate.MayStillLook(context, caller, desk), lifetime.ApplicationStopping, context.RequestAborted));
    }

    private static async IAsyncEnumerable<SseItem<string>> EventsAsync(
        NowText text, PanelFeed feed, Func<bool> mayStillLook, CancellationToken stopping, [EnumeratorCancellation] CancellationToken aborted)
    {
        // An open stream would otherwise hold up the stop of the whole service, and so the safe outputs.
        using CancellationTokenSource ended = CancellationTokenSource.CreateLinkedTokenSource(stopping, aborted);
        long sequence = long.MinValue;
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
            yield return new SseItem<string>(text.Of(news), "now")
            {
                EventId = sequence.ToString(),
                ReconnectionInterval = TimeSpan.FromSeconds(2),
            };

            await Task.Delay(LeastGap, ended.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
