using PileController.Plans.Ahead;

namespace PileController.Tests.Support;

/// <summary>A stand-in for seasons ahead: each waits until it is let through, and comes to made-up figures.</summary>
public sealed class SampleSeasons
{
    private int _running;
    private int _mostRunning;
    private int _made;

    /// <summary>Seasons wait at it.</summary>
    public SemaphoreSlim Gate { get; } = new(0);

    /// <summary>Released each time a season begins.</summary>
    public SemaphoreSlim Begun { get; } = new(0);

    /// <summary>Set once a season has been cancelled.</summary>
    public TaskCompletionSource Cancelled { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>What a season throws, or null.</summary>
    public Exception? Throws { get; set; }

    /// <summary>Seasons finished.</summary>
    public int Made => Volatile.Read(ref _made);

    /// <summary>The most that ran at one time.</summary>
    public int MostRunning => Volatile.Read(ref _mostRunning);

    /// <summary>Whether the newest ran on a thread that answers requests and ticks; null before the first.</summary>
    public bool? RanOnPool { get; private set; }

    /// <summary>Lets so many seasons through.</summary>
    public void Let(int seasons) => Gate.Release(seasons);

    internal SeasonOutcome Run(AheadRequest request, int season, CancellationToken stop)
    {
        _mostRunning = Math.Max(_mostRunning, Interlocked.Increment(ref _running));
        RanOnPool = Thread.CurrentThread.IsThreadPoolThread;
        Begun.Release();
        try
        {
            Gate.Wait(stop);
        }
        catch (OperationCanceledException)
        {
            Cancelled.TrySetResult();
            throw;
        }
        finally
        {
            Interlocked.Decrement(ref _running);
        }

        if (Throws is { } fault)
        {
            Throws = null;
            throw fault;
        }

        Interlocked.Increment(ref _made);
        return new SeasonOutcome(
            season % request.Winters.Count, 100 * (season + 1), 60 * (season + 1), 6000, 2000, 2.5, 12, 20, 9, season % 2 == 0 ? 96 : null,
            1900, 1300, 40, 9, 1e-14);
    }
}
