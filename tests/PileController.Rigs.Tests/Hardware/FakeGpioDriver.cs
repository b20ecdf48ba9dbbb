using System.Device.Gpio;

namespace PileController.Rigs.Tests.Hardware;

/// <summary>Lines without a chip: remembers in order what was done to them, and fails when told to.</summary>
internal sealed class FakeGpioDriver : GpioDriver
{
    private readonly Dictionary<int, PinMode> _modes = [];
    private readonly Dictionary<int, PinValue> _values = [];

    /// <summary>What was done, as "open 17", "output 17 low", "write 17 high", "close 17", "dispose".</summary>
    public List<string> Deeds { get; } = [];

    /// <summary>Lines whose writes fail.</summary>
    public HashSet<int> BrokenPins { get; } = [];

    /// <summary>Lines that stay inputs whatever they are told.</summary>
    public HashSet<int> StubbornPins { get; } = [];

    /// <summary>Lines that take what is written and stay as they are.</summary>
    public HashSet<int> DeafPins { get; } = [];

    /// <summary>Lines that cannot be read.</summary>
    public HashSet<int> UnreadablePins { get; } = [];

    /// <summary>Told of every write.</summary>
    public Action<int, PinValue>? Writing { get; set; }

    /// <summary>Sets a line from outside.</summary>
    public void Pull(int pin, PinValue value) => _values[pin] = value;

    public bool IsHigh(int pin) => _values.TryGetValue(pin, out PinValue value) && value == PinValue.High;

    protected override int PinCount => 54;

    protected override void OpenPin(int pinNumber)
    {
        Deeds.Add($"open {pinNumber}");
        _modes[pinNumber] = PinMode.Input;
    }

    protected override void ClosePin(int pinNumber) => Deeds.Add($"close {pinNumber}");

    protected override void SetPinMode(int pinNumber, PinMode mode)
    {
        Deeds.Add($"{Name(mode)} {pinNumber}");
        _modes[pinNumber] = mode;
    }

    protected override void SetPinMode(int pinNumber, PinMode mode, PinValue initialValue)
    {
        Deeds.Add($"{Name(mode)} {pinNumber} {Name(initialValue)}");
        _modes[pinNumber] = StubbornPins.Contains(pinNumber) ? PinMode.Input : mode;
        _values[pinNumber] = initialValue;
    }

    protected override PinMode GetPinMode(int pinNumber) => _modes[pinNumber];

    protected override bool IsPinModeSupported(int pinNumber, PinMode mode) => true;

    protected override PinValue Read(int pinNumber) =>
        UnreadablePins.Contains(pinNumber) ? throw new IOException("no such device") : _values.GetValueOrDefault(pinNumber);

    protected override void Write(int pinNumber, PinValue value)
    {
        if (BrokenPins.Contains(pinNumber))
        {
            throw new IOException("line is busy");
        }

        Deeds.Add($"write {pinNumber} {Name(value)}");
        if (!DeafPins.Contains(pinNumber))
        {
            _values[pinNumber] = value;
        }

        Writing?.Invoke(pinNumber, value);
    }

    protected override WaitForEventResult WaitForEvent(
        int pinNumber, PinEventTypes eventTypes, CancellationToken cancellationToken) => default;

    protected override void AddCallbackForPinValueChangedEvent(
        int pinNumber, PinEventTypes eventTypes, PinChangeEventHandler callback) => Deeds.Add($"listen {pinNumber}");

    protected override void RemoveCallbackForPinValueChangedEvent(int pinNumber, PinChangeEventHandler callback) =>
        Deeds.Add($"unlisten {pinNumber}");

    protected override void Dispose(bool disposing)
    {
        Deeds.Add("dispose");
        base.Dispose(disposing);
    }

    private static string Name(PinMode mode) => mode == PinMode.Output ? "output" : "input";

    private static string Name(PinValue value) => value == PinValue.High ? "high" : "low";
}
