namespace PileController.Service;

/// <summary>
/// Tells watchers of ticks. A slow watcher is told the newest and misses those between; it never holds up the loop or
/// makes a queue grow. The last few are kept for whoever was cut off and comes back.
/// </summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
public sealed class PanelFeed
{
    /// <summary>How many ticks are kept: five minutes of ticks of ten seconds.</summary>
    public const int KeptTicks = 30;

    private readonly TimeProvider _realTime;

    // The oldest first. Never changed, only replaced: whoever reads one has it whole.
    private volatile Entry[] _kept = [];
    private TaskCompletionSource _next = NewSource();

    /// <summary>Makes a feed with no news.</summary>
    /// <param name="realTime">The clock by which the age of news is told: true time, also in the demo.</param>
    public PanelFeed(TimeProvider realTime) => _realTime = realTime;

    /// <summary>The newest tick, or null before the first.</summary>
    public TickNews? Latest => _kept is [.., var entry] ? entry.News : null;

    /// <summary>True time since the newest tick was told, or null before the first.</summary>
    public TimeSpan? Age => _kept is [.., var entry] ? _realTime.GetElapsedTime(entry.Timestamp) : null;

    /// <summary>The ticks that are kept, the oldest first.</summary>
    public IReadOnlyList<TickNews> Kept => Array.ConvertAll(_kept, entry => entry.News);

    /// <summary>True time since a tick was told, or null where it is not kept.</summary>
    public TimeSpan? AgeOf(TickNews news) =>
        Array.FindLast(_kept, entry => ReferenceEquals(entry.News, news)) is { } told ? _realTime.GetElapsedTime(told.Timestamp) : null;

    /// <summary>Tells a tick.</summary>
    public void Publish(TickNews news)
    {
        Entry[] before = _kept;
        _kept = [.. before.AsSpan(Math.Max(0, before.Length - KeptTicks + 1)), new Entry(news, _realTime.GetTimestamp())];
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
