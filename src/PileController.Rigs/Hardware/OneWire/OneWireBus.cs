namespace PileController.Rigs.Hardware.OneWire;

/// <summary>One probe's last answer and when it was asked for.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="AskedAt">Time stamp of the time provider at the moment the probe was asked.</param>
internal sealed record ProbeSample(ProbeAnswer Answer, long AskedAt);

/// <summary>
/// The probes of one wire, asked one after the other by a thread of their own: a read blocks in the kernel, and
/// nothing else may wait for it.
/// </summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class OneWireBus : IDisposable
{
    private static readonly TimeSpan LastWait = TimeSpan.FromSeconds(1);

    private readonly OneWireProbe[] _probes;
    private readonly ProbeSample?[] _samples;
    private readonly int[] _sweepsOut;
    private readonly TimeProvider _time;
    private readonly OneWireLimits _limits;
    private readonly Lock _gate = new();
    private readonly SemaphoreSlim _wanted = new(0);
    private readonly Thread _thread;
    private TaskCompletionSource? _next;
    private volatile bool _stopping;

    public OneWireBus(IReadOnlyList<OneWireProbe> probes, TimeProvider time, OneWireLimits limits)
    {
        _probes = [.. probes];
        _samples = new ProbeSample?[_probes.Length];
        _sweepsOut = new int[_probes.Length];
        _time = time;
        _limits = limits;
        _thread = new Thread(Run) { IsBackground = true, Name = "probe bus" };
        _thread.Start();
    }

    /// <summary>Asks all probes once more.</summary>
    /// <returns>Done when a sweep that began after this call is through.</returns>
    public Task Sweep()
    {
        lock (_gate)
        {
            if (_next is null)
            {
                _next = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
                _wanted.Release();
            }

            return _next.Task;
        }
    }

    /// <summary>The last answer of a probe, or null when it has given none yet.</summary>
    public ProbeSample? Last(int probe) => Volatile.Read(ref _samples[probe]);

    /// <summary>Ends the thread. One that hangs in the kernel is left to end with the process.</summary>
    public void Dispose()
    {
        _stopping = true;
        _wanted.Release();
        if (_thread.Join(LastWait))
        {
            _wanted.Dispose();
        }
    }

    private void Run()
    {
        while (true)
        {
            _wanted.Wait();
            TaskCompletionSource? done;
            lock (_gate)
            {
                done = _next;
                _next = null;
            }

            for (int i = 0; i < _probes.Length && !_stopping; i++)
            {
                Ask(i);
            }

            done?.TrySetResult();
            if (_stopping)
            {
                return;
            }
        }
    }

    private void Ask(int i)
    {
        if (_sweepsOut[i] > 0)
        {
            _sweepsOut[i]--;
            return;
        }

        long askedAt = _time.GetTimestamp();
        ProbeAnswer answer = _probes[i].Read();
        Volatile.Write(ref _samples[i], new ProbeSample(answer, askedAt));
        if (_time.GetElapsedTime(askedAt) > _limits.Probe)
        {
            _sweepsOut[i] = _limits.SweepsOut;
        }
    }
}
