using System.Device.Gpio;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>What the end switches say.</summary>
internal enum ValveEnd
{
    /// <summary>It stands at neither end.</summary>
    Neither = 0,

    /// <summary>It stands open.</summary>
    Open,

    /// <summary>It stands shut.</summary>
    Shut,

    /// <summary>Both report, which cannot be.</summary>
    Both,
}

/// <summary>The two end switches of a motor valve, each on an input.</summary>
internal sealed class ValveEnds
{
    private readonly GpioController _controller;
    private readonly int _open;
    private readonly int _shut;
    private readonly bool _activeLow;

    /// <summary>Opens both inputs. Their pull resistors are in the wiring.</summary>
    /// <exception cref="RigFaultException">One cannot be opened.</exception>
    public ValveEnds(GpioController controller, int open, int shut, bool activeLow)
    {
        _controller = controller;
        _open = open;
        _shut = shut;
        _activeLow = activeLow;
        foreach (int line in (int[])[open, shut])
        {
            try
            {
                controller.OpenPin(line, PinMode.Input);
            }
            catch (Exception error)
            {
                throw new RigFaultException($"The valve's end switch on line {line} cannot be opened as an input: {error.Message}", error);
            }
        }
    }

    /// <summary>What they say now.</summary>
    /// <exception cref="Exception">An input cannot be read.</exception>
    public ValveEnd Read() => (Reports(_open), Reports(_shut)) switch
    {
        (true, true) => ValveEnd.Both,
        (true, false) => ValveEnd.Open,
        (false, true) => ValveEnd.Shut,
        _ => ValveEnd.Neither,
    };

    private bool Reports(int line) => (_controller.Read(line) == PinValue.High) != _activeLow;
}
