using System.Collections.Concurrent;
using PileController.Panel.Planning;

namespace PileController.Access;

/// <summary>Slow hashes, one at a time on a thread that the ticks always go before. Few may wait.</summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class HashQueue : IDisposable
{
    private const int MostWaiting = 4;
    private readonly BlockingCollection<Action> _waiting = new(MostWaiting);

    /// <summary>Starts the thread.</summary>
    public HashQueue() => QuietThread.Start("passphrases", () =>
    {
        foreach (Action one in _waiting.GetConsumingEnumerable())
        {
            one();
        }
    });

    /// <summary>Runs a hash in its turn; null when too many wait.</summary>
    public Task<T>? TryRun<T>(Func<T> hash)
    {
        TaskCompletionSource<T> done = new(TaskCreationOptions.RunContinuationsAsynchronously);
        try
        {
            return _waiting.TryAdd(() => Answer(hash, done)) ? done.Task : null;
        }
        catch (InvalidOperationException)
        {
            // The program stops.
            return null;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _waiting.CompleteAdding();

    private static void Answer<T>(Func<T> hash, TaskCompletionSource<T> done)
    {
        try
        {
            done.SetResult(hash());
        }
        catch (Exception e)
        {
            done.SetException(e);
        }
    }
}
