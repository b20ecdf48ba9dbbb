using System.Threading.Channels;

namespace PileController.Alarms.Push;

/// <summary>
/// The queue before one sink: what comes while a message waits or fails goes into the next one, so a storm is one message
/// and not a hundred. Bounded; tries again ever more slowly.
/// </summary>
/// <param name="sink">Where it goes.</param>
/// <param name="holding">Name of the holding.</param>
/// <param name="time">True time.</param>
/// <param name="trouble">Told why nothing has gone out for an hour, or null once it goes out again.</param>
/// <threadsafety>Anyone may post; one runs.</threadsafety>
internal sealed class PushLine(IPushSink sink, string holding, TimeProvider time, Action<string, string?> trouble)
{
    /// <summary>Alarms told in one message at most; the rest is counted.</summary>
    public const int MostTold = 20;

    private const int MostWaiting = 200;

    /// <summary>What comes within this time goes out together.</summary>
    internal static readonly TimeSpan Gather = TimeSpan.FromSeconds(5);

    /// <summary>First wait after a failure; each is twice the one before.</summary>
    internal static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(10);

    /// <summary>Longest wait.</summary>
    internal static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(15);

    /// <summary>So long it may fail before people are told on the page.</summary>
    internal static readonly TimeSpan Patience = TimeSpan.FromHours(1);

    private readonly Lock _gate = new();
    private readonly List<PushItem> _waiting = [];
    private readonly Channel<bool> _news = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private int _dropped;

    /// <summary>Hands over what is to be told. Never waits.</summary>
    public void Post(IEnumerable<PushItem> items)
    {
        lock (_gate)
        {
            _waiting.AddRange(items);
            int tooMany = _waiting.Count - MostWaiting;
            if (tooMany > 0)
            {
                _waiting.RemoveRange(0, tooMany);
                _dropped += tooMany;
            }

            if (_waiting.Count > 0)
            {
                _news.Writer.TryWrite(true);
            }
        }
    }

    /// <summary>Sends until stopped.</summary>
    public async Task RunAsync(CancellationToken stopping)
    {
        long? failingSince = null;
        TimeSpan wait = FirstWait;
        while (true)
        {
            if (failingSince is null)
            {
                await _news.Reader.ReadAsync(stopping).ConfigureAwait(false);
                await Task.Delay(Gather, time, stopping).ConfigureAwait(false);
            }

            (PushMessage? message, int taken, int dropped) = Waiting();
            if (message is null)
            {
                failingSince = null;
                continue;
            }

            string? why = await TryAsync(message, stopping).ConfigureAwait(false);
            if (why is null)
            {
                Over(taken, dropped);
                trouble(sink.Name, null);
                (failingSince, wait) = (null, FirstWait);
                continue;
            }

            failingSince ??= time.GetTimestamp();
            await Task.Delay(wait, time, stopping).ConfigureAwait(false);
            wait = wait * 2 < LongestWait ? wait * 2 : LongestWait;
            if (time.GetElapsedTime(failingSince.Value) >= Patience)
            {
                trouble(sink.Name, $"{sink.Name}: {why}");
            }
        }
    }

    private async Task<string?> TryAsync(PushMessage message, CancellationToken stopping)
    {
        try
        {
            await sink.SendAsync(message, stopping).ConfigureAwait(false);
            return null;
        }
        catch (Exception fault) when (!stopping.IsCancellationRequested)
        {
            return fault.Message;
        }
    }

    private (PushMessage? Message, int Taken, int Dropped) Waiting()
    {
        lock (_gate)
        {
            // The newest are told: they say how things stand.
            int more = Math.Max(0, _waiting.Count - MostTold);
            return _waiting.Count == 0
                ? (null, 0, 0)
                : (new PushMessage(holding, [.. _waiting.Skip(more)], more + _dropped), _waiting.Count, _dropped);
        }
    }

    private void Over(int taken, int dropped)
    {
        lock (_gate)
        {
            // What was pushed out meanwhile was part of what went out.
            int pushedOut = _dropped - dropped;
            int left = Math.Max(0, taken - pushedOut);
            _waiting.RemoveRange(0, left);
            _dropped = Math.Max(0, pushedOut - taken);
            if (_waiting.Count > 0)
            {
                _news.Writer.TryWrite(true);
            }
        }
    }
}
