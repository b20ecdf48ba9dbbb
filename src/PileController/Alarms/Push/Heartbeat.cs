using PileController.Service;

namespace PileController.Alarms.Push;

/// <summary>A sign of life.</summary>
/// <param name="Holding">Name of the holding.</param>
/// <param name="SentUtc">When it was sent.</param>
/// <param name="Tick">Number of the newest tick.</param>
/// <param name="Standing">Alarms that stand.</param>
/// <param name="Unseen">Alarms nobody has seen.</param>
/// <param name="Worst">low, medium or high; null when none is listed.</param>
internal sealed record HeartbeatBody(string Holding, DateTimeOffset SentUtc, long Tick, int Standing, int Unseen, string? Worst);

/// <summary>
/// Posts a sign of life as long as ticks come on time. A board that is dead, hangs or has no network posts none: that is
/// what whoever listens has to notice.
/// </summary>
internal sealed class Heartbeat(
    WebhookSink sink, TimeSpan every, string holding, Punctuality punctuality, PanelFeed feed, AlarmDesk desk, TimeProvider time,
    PushTroubles troubles, ILogger<Heartbeat> logger) : BesideService(logger)
{
    private const string Name = "The heartbeat";

    private long? _failingSince;

    /// <inheritdoc/>
    public override void Dispose()
    {
        sink.Dispose();
        base.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task RunAsync(CancellationToken stopping)
    {
        // The first goes out as soon as there is a tick to tell of.
        await feed.AfterAsync(long.MinValue, stopping).ConfigureAwait(false);
        using PeriodicTimer timer = new(every, time);
        do
        {
            await BeatAsync(stopping).ConfigureAwait(false);
        }
        while (await timer.WaitForNextTickAsync(stopping).ConfigureAwait(false));
    }

    private async Task BeatAsync(CancellationToken stopping)
    {
        if (feed.Latest is not { } news || !punctuality.OnTime(feed.Age))
        {
            return;
        }

        AlarmCount count = desk.Count;
        HeartbeatBody body = new(
            holding, time.GetUtcNow(), news.Sequence, count.Standing, count.Unseen, count.Worst is { } worst ? Panel.WireNames.Of(worst) : null);
        try
        {
            await sink.PostAsync(body, stopping).ConfigureAwait(false);
            _failingSince = null;
            troubles.Set(Name, null);
        }
        catch (Exception fault) when (!stopping.IsCancellationRequested)
        {
            _failingSince ??= time.GetTimestamp();
            if (time.GetElapsedTime(_failingSince.Value) >= PushLine.Patience)
            {
                troubles.Set(Name, $"{Name}: {fault.Message}");
            }
        }
    }
}
