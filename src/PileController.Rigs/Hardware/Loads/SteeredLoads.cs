using PileController.Control.Decisions;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>
/// The loads of a rig, told their duty now and then and driven in time between: by a beat from outside, and by a timer of
/// their own where one is due before the next. They are off once the control loop has been silent for three minutes.
/// </summary>
/// <threadsafety>All members may be called at once.</threadsafety>
internal sealed class SteeredLoads : IAsyncDisposable
{
    // Three of the longest ticks: a loop that has not spoken for so long is not steering any more.
    private static readonly TimeSpan LongestSilence = TimeSpan.FromSeconds(180);

    private static readonly TimeSpan SoonAgain = TimeSpan.FromSeconds(0.05);

    private readonly TimeProvider _time;
    private readonly Action<string> _report;
    private readonly ILoad[] _loads;
    private readonly ITimer _due;
    private readonly Lock _gate = new();
    private readonly long _began;
    private long _lastApplied;
    private RigFaultException? _fault;
    private bool _silent;
    private bool _ended;

    /// <summary>Opens the loads, off.</summary>
    /// <param name="fitted">How each is opened (<see cref="Actuators.Of"/>).</param>
    /// <param name="time">Clock and timer.</param>
    /// <param name="report">Told in a sentence when a load fails, or when all are dropped because the loop is silent; throws nothing.</param>
    /// <exception cref="RigFaultException">One cannot be opened.</exception>
    public SteeredLoads(IReadOnlyList<Func<ILoad>> fitted, TimeProvider time, Action<string> report)
    {
        _time = time;
        _report = report;
        _loads = [.. fitted.Select(open => open())];
        _began = _lastApplied = time.GetTimestamp();
        _due = time.CreateTimer(_ => OnDue(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>What could not be switched off at the end, a sentence each; empty before.</summary>
    public IReadOnlyList<string> LeftOn { get; private set; } = [];

    /// <summary>Switches the loads, and holds their duty until told otherwise or until the loop falls silent.</summary>
    /// <returns>Why one could not be switched now or since the call before; null when all were.</returns>
    /// <exception cref="ObjectDisposedException">They have been switched off for good.</exception>
    public RigFaultException? Apply(in Outputs outputs, bool valveIsHeld)
    {
        List<string> news = [];
        RigFaultException? fault;
        lock (_gate)
        {
            ObjectDisposedException.ThrowIf(_ended, this);
            _lastApplied = _time.GetTimestamp();
            _silent = false;
            Set_NeedsLock(outputs, valveIsHeld);
            Drive_NeedsLock(news);
            fault = _fault;
            _fault = null;
        }

        news.ForEach(_report);
        return fault;
    }

    /// <summary>Drives them once more, unless somebody is at it; each second.</summary>
    public void Beat()
    {
        List<string> news = [];
        _gate.UnlessBusy(() => Beat_NeedsLock(news));
        news.ForEach(_report);
    }

    /// <summary>Switches all off, for good. What cannot be switched off is reported.</summary>
    public async ValueTask DisposeAsync()
    {
        lock (_gate)
        {
            if (_ended)
            {
                return;
            }

            _ended = true;
            LeftOn = [.. _loads.Select(load => load.SwitchOff()?.Message).OfType<string>()];
        }

        foreach (string left in LeftOn)
        {
            _report(left);
        }

        await _due.DisposeAsync().ConfigureAwait(false);
    }

    private void OnDue()
    {
        List<string> news = [];
        if (!_gate.UnlessBusy(() => Drive_NeedsLock(news)))
        {
            // Whoever is in there may have driven the valve a moment too early.
            _due.Change(SoonAgain, Timeout.InfiniteTimeSpan);
        }

        news.ForEach(_report);
    }

    private void Beat_NeedsLock(List<string> news)
    {
        if (_time.GetElapsedTime(_lastApplied) > LongestSilence && !_silent)
        {
            _silent = true;
            Set_NeedsLock(Outputs.Safe, valveIsHeld: false);
            news.Add(
                $"The control loop has been silent for {LongestSilence.TotalSeconds} s: all outputs are made safe.");
        }

        Drive_NeedsLock(news);
    }

    private void Set_NeedsLock(in Outputs outputs, bool valveIsHeld)
    {
        foreach (ILoad load in _loads)
        {
            load.Want(outputs, valveIsHeld);
        }
    }

    private void Drive_NeedsLock(List<string> news)
    {
        if (_ended)
        {
            return;
        }

        double seconds = _time.GetElapsedTime(_began).TotalSeconds;
        double? due = null;
        foreach (ILoad load in _loads)
        {
            bool wasFailing = load.IsFailing;
            if (load.Drive(seconds, news) is { } fault)
            {
                _fault ??= fault;

                // A line that stays broken is reported once, not every second.
                if (!wasFailing)
                {
                    news.Add(fault.Message);
                }
            }

            due = load.DueSeconds is { } soon && !(soon >= due) ? soon : due;
        }

        // A valve is stopped when it has arrived, not at the next beat.
        _due.Change(due is { } wait ? TimeSpan.FromSeconds(wait) : Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }
}
