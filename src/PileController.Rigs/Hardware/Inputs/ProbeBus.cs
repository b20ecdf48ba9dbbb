namespace PileController.Rigs.Hardware.Inputs;

/// <summary>One device's last answers and when it was asked for them.</summary>
/// <param name="Answers">One for each of its channels.</param>
/// <param name="AskedAt">Time stamp of the time provider at the moment the device was asked.</param>
internal sealed record BusSample(IReadOnlyList<Measured> Answers, long AskedAt);

/// <summary>
/// The devices of one wire or bus, asked one after the other by a thread of their own: a read blocks in the kernel, and
/// nothing else may wait for it.
/// </summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class ProbeBus : IDisposable
{
    private static readonly TimeSpan LastWait = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan BetweenGlances = TimeSpan.FromSeconds(1);

    private readonly IStation[] _stations;
    private readonly BusSample?[] _samples;
    private readonly int[] _sweepsOut;
    private readonly int[] _slow;
    private readonly TimeProvider _time;
    private readonly BusLimits _limits;
    private readonly Action? _before;
    private readonly Lock _gate = new();
    private readonly SemaphoreSlim _wanted = new(0);
    private readonly Thread _thread;
    private readonly ITimer? _glances;
    private TaskCompletionSource? _next;
    private bool _glanceWanted;
    private volatile bool _stopping;

    /// <summary>Starts the thread.</summary>
    /// <param name="stations">The devices, in the order in which they are asked.</param>
    /// <param name="time">Clock.</param>
    /// <param name="limits">How long they may take.</param>
    /// <param name="before">Done on the thread before each sweep; throws nothing. Null for nothing.</param>
    public ProbeBus(IReadOnlyList<IStation> stations, TimeProvider time, BusLimits limits, Action? before = null)
    {
        _stations = [.. stations];
        _samples = new BusSample?[_stations.Length];
        _sweepsOut = new int[_stations.Length];
        _slow = new int[_stations.Length];
        _time = time;
        _limits = limits;
        _before = before;
        _thread = new Thread(Run) { IsBackground = true, Name = "probe bus" };
        _thread.Start();
        _glances = _stations.Any(station => station.WantsGlances)
            ? time.CreateTimer(_ => WantGlance(), null, BetweenGlances, BetweenGlances)
            : null;
    }

    /// <summary>Asks all devices once more.</summary>
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

    /// <summary>The last answers of a device, or null when it has given none yet.</summary>
    public BusSample? Last(int station) => Volatile.Read(ref _samples[station]);

    /// <summary>Ends the thread. One that hangs in the kernel is left to end with the process.</summary>
    public void Dispose()
    {
        _glances?.Dispose();
        lock (_gate)
        {
            _stopping = true;
            _wanted.Release();
        }

        if (_thread.Join(LastWait))
        {
            _wanted.Dispose();
        }
    }

    private void WantGlance()
    {
        lock (_gate)
        {
            // One that has not been had yet is enough: the bus may hang.
            if (!_stopping && !_glanceWanted)
            {
                _glanceWanted = true;
                _wanted.Release();
            }
        }
    }

    private void Run()
    {
        while (true)
        {
            _wanted.Wait();
            TaskCompletionSource? done;
            bool glance;
            lock (_gate)
            {
                done = _next;
                _next = null;
                glance = _glanceWanted;
                _glanceWanted = false;
            }

            if (done is not null)
            {
                AskAll();
                done.TrySetResult();
            }
            else if (glance)
            {
                GlanceAtAll();
            }

            if (_stopping)
            {
                return;
            }
        }
    }

    private void AskAll()
    {
        if (!_stopping)
        {
            _before?.Invoke();
        }

        for (int i = 0; i < _stations.Length && !_stopping; i++)
        {
            Ask(i);
        }
    }

    private void GlanceAtAll()
    {
        for (int i = 0; i < _stations.Length && !_stopping; i++)
        {
            if (_stations[i].WantsGlances && _sweepsOut[i] == 0)
            {
                long began = _time.GetTimestamp();
                _stations[i].Glance();
                SitOutIfSlow(i, began);
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
        IReadOnlyList<Measured> answers = _stations[i].Ask();
        Volatile.Write(ref _samples[i], new BusSample(answers, askedAt));
        SitOutIfSlow(i, askedAt);
    }

    private void SitOutIfSlow(int i, long began)
    {
        // One that a tick could not wait for is not given a second chance to hold up the others.
        TimeSpan took = _time.GetElapsedTime(began);
        _slow[i] = took > _limits.Device ? _slow[i] + 1 : 0;
        if (_slow[i] >= _limits.SlowRunning || (_slow[i] > 0 && took >= _limits.Deadline))
        {
            _sweepsOut[i] = _limits.SweepsOut;
        }
    }
}
