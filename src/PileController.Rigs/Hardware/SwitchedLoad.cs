using System.Device.Gpio;

namespace PileController.Rigs.Hardware;

/// <summary>One load behind one line: opened as an output that is off from its first instant.</summary>
internal sealed class SwitchedLoad
{
    private readonly GpioController _controller;
    private readonly string _name;
    private readonly int _pin;
    private readonly bool _activeLow;
    private readonly SlowDuty _duty;

    /// <summary>Opens the line, off.</summary>
    /// <exception cref="RigFaultException">The line cannot be opened as an output.</exception>
    public SwitchedLoad(GpioController controller, string name, int pin, HardwareSettings hardware)
    {
        _controller = controller;
        _name = name;
        _pin = pin;
        _activeLow = hardware.ActiveLow;
        _duty = new SlowDuty(hardware.DutyPeriodSeconds);
        try
        {
            // Mode and value in one call: between two the load would see whatever the line was.
            controller.OpenPin(pin, PinMode.Output, Level(on: false));

            // Writing to an input would be taken without a word.
            if (controller.GetPinMode(pin) != PinMode.Output)
            {
                throw new InvalidOperationException("it stayed an input.");
            }
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The {name}'s line {pin} cannot be opened as an output: {error.Message}", error);
        }
    }

    /// <summary>The share of the time the load is to be on, 0 to 1.</summary>
    public double Duty { get; set; }

    /// <summary>True when the last write failed.</summary>
    public bool IsFailing { get; private set; }

    /// <summary>Switches the load as its duty wants it in this second.</summary>
    /// <returns>What went wrong, or null.</returns>
    public RigFaultException? Drive(long second) => Write(_duty.IsOn(Duty, second), "switched");

    /// <summary>Switches the load off.</summary>
    /// <returns>What went wrong, or null.</returns>
    public RigFaultException? SwitchOff()
    {
        Duty = 0;
        _duty.IsOn(0, 0);
        return Write(on: false, "switched off");
    }

    private RigFaultException? Write(bool on, string deed)
    {
        try
        {
            // Written even when nothing changed: a line that was disturbed comes back within a second.
            _controller.Write(_pin, Level(on));
            IsFailing = false;
            return null;
        }
        catch (Exception error)
        {
            IsFailing = true;
            return new RigFaultException($"The {_name}'s line {_pin} cannot be {deed}: {error.Message}", error);
        }
    }

    private PinValue Level(bool on) => on != _activeLow ? PinValue.High : PinValue.Low;
}
