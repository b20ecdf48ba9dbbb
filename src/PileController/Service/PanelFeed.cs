namespace PileController.Service;

/// <summary>
/// Tells watchers of ticks. It keeps the newest only: a slow watcher misses ticks, and never holds up the loop or
/// makes a queue grow.
/// </summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
public sealed class PanelFeed
{
    private readonly TimeProvider _realTime;
    private volatile Entry? _latest;
    private TaskCompletionSource _next = NewSource();

    /// <summary>Makes a feed with no news.</summary>
    /// <param name="realTime">The clock by which the age of news is told: true time, also in the demo.</param>
    public PanelFeed(TimeProvider realTime) => _realTime = realTime;

    /// <summary>The newest tick, or null before the first.</summary>
    public TickNews? Latest => _latest?.News;

    /// <summary>True time since the newest tick was told, or null before the first.</summary>
    public TimeSpan? Age => _latest is { } entry ? _realTime.GetElapsedTime(entry.Timestamp) : null;

    /// <summary>Tells a tick.</summary>
    public void Publish(TickNews news)
    {
        _latest = new Entry(news, _realTime.GetTimestamp());
        Interlocked.Exchange(ref _next, NewSource()).TrySetResult();
    }

    /// <summary>Waits for a tick newer than <paramref name="sequence"/>; the newest there is, not the one next to it.</summary>
    /// <exception cref="OperationCanceledException">The wait was given up.</exception>
    public async ValueTask<TickNews> AfterAsync(long sequence, CancellationToken cancellation)
    {
        while (true)
        {
            // Taken before the look at the newest: a tick told between the two completes this very task.
            Task next = Volatile.Read(ref _next).Task;
            if (Latest is { } news && news.Sequence > sequence)
            {
                return news;
            }

            await next.WaitAsync(cancellation).ConfigureAwait(false);
        }
    }

    private static TaskCompletionSource NewSource() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private sealed record Entry(TickNews News, long Timestamp);
}
