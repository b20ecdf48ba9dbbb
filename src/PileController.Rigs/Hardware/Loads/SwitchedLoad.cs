using PileController.Control.Decisions;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>A load that knows on and off, behind one line.</summary>
/// <param name="name">What it is.</param>
/// <param name="line">Its line, off.</param>
/// <param name="duty">How a duty is made of on and off.</param>
/// <param name="wanted">Its share of what all actuators are told, 0 to 1.</param>
internal sealed class SwitchedLoad(string name, IOutput line, SlowDuty duty, Func<Outputs, double> wanted) : ILoad
{
    private double _duty;

    /// <inheritdoc/>
    public bool IsFailing { get; private set; }

    /// <inheritdoc/>
    public double? DueSeconds => null;

    /// <inheritdoc/>
    public void Want(in Outputs outputs, bool valveIsHeld) => _duty = wanted(outputs);

    /// <inheritdoc/>
    public RigFaultException? Drive(double seconds, List<string> news) => Write(duty.IsOn(_duty, (long)seconds), "switched");

    /// <inheritdoc/>
    public RigFaultException? SwitchOff()
    {
        _duty = 0;
        duty.IsOn(0, 0);
        return Write(on: false, "switched off");
    }

    private RigFaultException? Write(bool on, string deed)
    {
        // Written even when nothing changed: a line that was disturbed comes back within a second.
        RigFaultException? fault = Deed.Try(() => line.Write(on ? 1 : 0), name, line.Place, deed);
        IsFailing = fault is not null;
        return fault;
    }
}
