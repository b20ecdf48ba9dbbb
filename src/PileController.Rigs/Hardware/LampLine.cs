using System.Device.Gpio;

namespace PileController.Rigs.Hardware;

/// <summary>
/// The line of a lamp that fails on: let go from its first instant, held only while all is said to be well, let go at the
/// end. Where the kernel keeps lines as they were when a program dies, only a line that beats tells the two apart.
/// </summary>
internal sealed class LampLine : IAlarmLamp
{
    private static readonly TimeSpan LongestSilence = TimeSpan.FromSeconds(10);

    private readonly GpioController _controller;
    private readonly int _line;
    private readonly bool _activeLow;
    private readonly bool _beats;
    private readonly TimeProvider _time;
    private readonly Lock _gate = new();
    private long? _wellSaid;
    private bool _high;
    private bool _isFailing;

    /// <summary>Opens the line, let go.</summary>
    /// <exception cref="RigFaultException">The line cannot be opened as an output.</exception>
    public LampLine(GpioController controller, int line, HardwareSettings hardware, TimeProvider time)
    {
        _controller = controller;
        _line = line;
        _activeLow = hardware.ActiveLow;
        _beats = hardware.LampBeats;
        _time = time;
        try
        {
            controller.OpenPin(line, PinMode.Output, Level(held: false));
            if (controller.GetPinMode(line) != PinMode.Output)
            {
                throw new InvalidOperationException("it stayed an input.");
            }
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The lamp's line {line} cannot be opened as an output: {error.Message}", error);
        }
    }

    /// <inheritdoc/>
    public void Say(bool allIsWell)
    {
        lock (_gate)
        {
            _wellSaid = allIsWell ? _time.GetTimestamp() : null;
        }
    }

    /// <summary>Holds the line or lets it go; called every second.</summary>
    /// <param name="news">Told once when the line fails.</param>
    public void Drive(List<string> news)
    {
        bool well;
        lock (_gate)
        {
            well = _wellSaid is { } said && _time.GetElapsedTime(said) <= LongestSilence;
        }

        _high = well && !(_beats && _high);
        Write(_high, news);
    }

    /// <summary>Lets the line go for good.</summary>
    /// <param name="news">Told when that fails.</param>
    public void LetGo(List<string> news)
    {
        Say(false);
        Write(held: false, news);
    }

    private void Write(bool held, List<string> news)
    {
        try
        {
            _controller.Write(_line, Level(held));
            _isFailing = false;
        }
        catch (Exception error)
        {
            if (!_isFailing)
            {
                news.Add($"The lamp's line {_line} cannot be written: {error.Message}");
            }

            _isFailing = true;
        }
    }

    private PinValue Level(bool held) => held != _activeLow ? PinValue.High : PinValue.Low;
}
