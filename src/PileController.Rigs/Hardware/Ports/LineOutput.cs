using System.Device.Gpio;

namespace PileController.Rigs.Hardware.Ports;

/// <summary>One line of the chip: opened as an output that is off from its first instant.</summary>
internal sealed class LineOutput : IOutput
{
    private readonly GpioController _controller;
    private readonly int _line;
    private readonly bool _activeLow;
    private bool _mayBeOn;
    private bool _hasBeenRead;

    /// <summary>Opens the line, off.</summary>
    /// <exception cref="RigFaultException">The line cannot be opened as an output.</exception>
    public LineOutput(GpioController controller, string name, int line, bool activeLow)
    {
        _controller = controller;
        _line = line;
        _activeLow = activeLow;
        try
        {
            // Mode and value in one call: between two the load would see whatever the line was.
            controller.OpenPin(line, PinMode.Output, Level(on: false));

            // Writing to an input would be taken without a word.
            if (controller.GetPinMode(line) != PinMode.Output)
            {
                throw new InvalidOperationException("it stayed an input.");
            }
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The {name}'s line {line} cannot be opened as an output: {error.Message}", error);
        }
    }

    /// <inheritdoc/>
    public string Place => $"line {_line}";

    /// <inheritdoc/>
    public void Write(double share)
    {
        bool on = share > 0;
        _mayBeOn |= on;
        _controller.Write(_line, Level(on));
        if (TryRead() is { } read && read != on)
        {
            throw new InvalidOperationException($"it reads {(read ? "on" : "off")} after it was written {(on ? "on" : "off")}.");
        }

        _mayBeOn = on;
    }

    /// <inheritdoc/>
    public double Read() => IsOn() ? 1 : 0;

    /// <inheritdoc/>
    public void MakeSafe() => Write(0);

    /// <summary>Switches off what may be on. The controller lets go of its lines itself.</summary>
    public void Dispose()
    {
        if (_mayBeOn)
        {
            Write(0);
        }
    }

    private bool? TryRead()
    {
        try
        {
            bool on = IsOn();
            _hasBeenRead = true;
            return on;
        }
        catch (Exception) when (!_hasBeenRead)
        {
            // Some chips cannot read a line they drive: then what was written has to be believed. One that could and
            // no longer can has gone, and what is written to it may go nowhere without a word.
            return null;
        }
    }

    private bool IsOn() => (_controller.Read(_line) == PinValue.High) != _activeLow;

    private PinValue Level(bool on) => on != _activeLow ? PinValue.High : PinValue.Low;
}
