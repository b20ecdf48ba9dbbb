using System.Device.Gpio;

namespace PileController.Rigs.Hardware.Lines;

/// <summary>
/// Counts a meter's pulses on a line. The driver calls back on a thread of its own, which ends for good when the
/// callback throws or the driver stumbles; so the callback only counts, and a watch opens the line again when pulses
/// come and are not counted.
/// </summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class PulseMeter : IDisposable
{
    // About four looks a second, a gate of a second at every fourth; uneven, so that no pulse rate below 1000 a second
    // keeps step with them and shows the same level at each.
    private static readonly int[] LookMilliseconds = [227, 311, 269, 193];

    private readonly GpioController _controller;
    private readonly string _name;
    private readonly int _line;
    private readonly TimeProvider _time;
    private readonly Action<string> _report;
    private readonly PulseGates _gates;
    private readonly PulseWatch _watch = new();
    private readonly Lock _gate = new();
    private readonly ITimer _timer;
    private long _count;
    private int _looks;
    private bool _isListening;
    private bool _isLost;
    private bool _disposed;

    /// <summary>Opens the line and counts from now on.</summary>
    /// <param name="controller">The chip's lines.</param>
    /// <param name="name">Name for messages: "flow".</param>
    /// <param name="line">The line's number.</param>
    /// <param name="mostPerSecond">More pulses than this are bounce, 1/s.</param>
    /// <param name="time">Clock and timer.</param>
    /// <param name="report">Told when the count is lost and when it is found again.</param>
    /// <exception cref="RigFaultException">The line cannot be opened as an input, or gives no edges.</exception>
    public PulseMeter(
        GpioController controller, string name, int line, double mostPerSecond, TimeProvider time, Action<string> report)
    {
        _controller = controller;
        _name = name;
        _line = line;
        _time = time;
        _report = report;
        _gates = new PulseGates(time, mostPerSecond);
        InputLine.Open(controller, name, line);
        try
        {
            Listen();
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The line {line} of {name} gives no edges: {error.Message}", error);
        }

        _timer = time.CreateTimer(_ => OnLook(), null, Next(), Timeout.InfiniteTimeSpan);
    }

    /// <summary>The mean rate since the look before; null when it cannot be told.</summary>
    public PulseRate? Look()
    {
        lock (_gate)
        {
            return _isLost ? null : _gates.Look(Interlocked.Read(ref _count));
        }
    }

    /// <summary>Stops counting.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            if (_disposed)
            {
                return;
            }

            _disposed = true;
            StopListening();
        }

        _timer.Dispose();
    }

    private TimeSpan Next() => TimeSpan.FromMilliseconds(LookMilliseconds[_looks % LookMilliseconds.Length]);

    private void OnEdge(object sender, PinValueChangedEventArgs edge) => Interlocked.Increment(ref _count);

    private void OnLook()
    {
        List<string> news = [];
        lock (_gate)
        {
            if (_disposed)
            {
                return;
            }

            Watch_NeedsLock(news);
            _looks++;
            _timer.Change(Next(), Timeout.InfiniteTimeSpan);
        }

        news.ForEach(_report);
    }

    private void Watch_NeedsLock(List<string> news)
    {
        try
        {
            if (!_isListening)
            {
                Reopen();
            }

            PinValue level = _controller.Read(_line);
            long count = Interlocked.Read(ref _count);
            bool isGateDue = (_looks + 1) % LookMilliseconds.Length == 0;
            Judge_NeedsLock(count, level, isGateDue, news);
        }
        catch (Exception error)
        {
            // The timer's thread would take the process with it. The next look tries again.
            _isListening = false;
            Lose_NeedsLock(news, error.Message);
        }
    }

    private void Judge_NeedsLock(long count, PinValue level, bool isGateDue, List<string> news)
    {
        bool counted = _watch.See(count, level);
        if (_watch.IsDead)
        {
            Lose_NeedsLock(news, "pulses come and are not counted; it is opened again.");
            Reopen();
        }
        else if (_isLost && (counted || _watch.IsStill))
        {
            _isLost = false;
            _gates.Discard(count);
            news.Add($"The pulses of {_name} on line {_line} are counted again.");
        }
        else if (isGateDue)
        {
            _gates.Close(count);
        }
    }

    private void Lose_NeedsLock(List<string> news, string why)
    {
        if (!_isLost)
        {
            news.Add($"The pulses of {_name} on line {_line} cannot be counted: {why}");
        }

        _isLost = true;
    }

    private void Reopen()
    {
        StopListening();
        if (_controller.IsPinOpen(_line))
        {
            _controller.ClosePin(_line);
        }

        InputLine.Open(_controller, _name, _line);
        Listen();
        _watch.Reset();
    }

    private void Listen()
    {
        _controller.RegisterCallbackForPinValueChangedEvent(_line, PinEventTypes.Rising, OnEdge);
        _isListening = true;
    }

    private void StopListening()
    {
        _isListening = false;
        try
        {
            _controller.UnregisterCallbackForPinValueChangedEvent(_line, OnEdge);
        }
        catch (Exception)
        {
            // A watcher that died may say so only now; the line is closed next in any case.
        }
    }
}
