using System.Device.Gpio;

namespace PileController.Rigs.Tests.Hardware.Lines;

/// <summary>Input lines without a chip: a test sets their levels, and may let the driver go deaf as a dead watcher does.</summary>
internal sealed class FakeLines : GpioDriver
{
    private readonly Dictionary<int, bool> _high = [];
    private readonly Dictionary<int, PinMode> _modes = [];
    private readonly Dictionary<int, PinChangeEventHandler> _listeners = [];

    /// <summary>How often each line was opened.</summary>
    public Dictionary<int, int> Opened { get; } = [];

    /// <summary>Lines whose levels can be read but whose edges nobody hears, until they are opened again.</summary>
    public HashSet<int> Deaf { get; } = [];

    /// <summary>Lines that cannot be opened or read.</summary>
    public HashSet<int> Broken { get; } = [];

    /// <summary>Lines that stay outputs whatever they are told.</summary>
    public HashSet<int> Stubborn { get; } = [];

    /// <summary>Sets a level; a rise is told to whoever listens.</summary>
    public void Set(int line, bool high)
    {
        bool rises = high && !_high.GetValueOrDefault(line);
        _high[line] = high;
        if (rises && !Deaf.Contains(line) && _listeners.TryGetValue(line, out PinChangeEventHandler? listener))
        {
            listener(this, new PinValueChangedEventArgs(PinEventTypes.Rising, line));
        }
    }

    public bool IsListened(int line) => _listeners.ContainsKey(line);

    protected override int PinCount => 54;

    protected override void OpenPin(int pinNumber)
    {
        Opened[pinNumber] = Opened.GetValueOrDefault(pinNumber) + 1;
        if (Broken.Contains(pinNumber))
        {
            throw new IOException("line is busy");
        }

        Deaf.Remove(pinNumber);
        _modes[pinNumber] = PinMode.Input;
    }

    protected override void ClosePin(int pinNumber)
    {
    }

    protected override void SetPinMode(int pinNumber, PinMode mode) =>
        _modes[pinNumber] = Stubborn.Contains(pinNumber) ? PinMode.Output : mode;

    protected override void SetPinMode(int pinNumber, PinMode mode, PinValue initialValue)
    {
        _modes[pinNumber] = mode;
        _high[pinNumber] = initialValue == PinValue.High;
    }

    protected override PinMode GetPinMode(int pinNumber) => _modes[pinNumber];

    protected override bool IsPinModeSupported(int pinNumber, PinMode mode) => true;

    protected override PinValue Read(int pinNumber) => Broken.Contains(pinNumber)
        ? throw new IOException("line is busy")
        : _high.GetValueOrDefault(pinNumber) ? PinValue.High : PinValue.Low;

    protected override void Write(int pinNumber, PinValue value) => _high[pinNumber] = value == PinValue.High;

    protected override WaitForEventResult WaitForEvent(
        int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken) => default;

    protected override void AddCallbackForPinValueChangedEvent(
        int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback)
    {
        Assert.Equal(PinEventTypes.Rising, eventTypes);
        _listeners[pinNumber] = callback;
    }

    protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback) =>
        _listeners.Remove(pinNumber);
}
