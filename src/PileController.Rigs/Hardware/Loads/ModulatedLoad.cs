using PileController.Control.Decisions;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>
/// A load whose duty is a signal: PWM on its gate, or 0 to 10 V made of PWM. A line in series with it, where there is one, is on
/// only while it is to run: off first, on last.
/// </summary>
/// <param name="name">What it is.</param>
/// <param name="signal">The signal, at nothing.</param>
/// <param name="map">Which signal for which duty.</param>
/// <param name="series">The line of the relay in series, off; null where there is none.</param>
/// <param name="wanted">Its share of what all actuators are told, 0 to 1.</param>
internal sealed class ModulatedLoad(
    string name, IOutput signal, SignalMap map, IOutput? series, Func<Outputs, double> wanted) : ILoad
{
    private double _duty;

    /// <inheritdoc/>
    public bool IsFailing { get; private set; }

    /// <inheritdoc/>
    public double? DueSeconds => null;

    /// <inheritdoc/>
    public void Want(in Outputs outputs, bool valveIsHeld) => _duty = wanted(outputs);

    /// <inheritdoc/>
    public RigFaultException? Drive(double seconds, List<string> news)
    {
        RigFaultException? fault = _duty > 0 ? Run() : Stand("switched off");
        IsFailing = fault is not null;
        return fault;
    }

    /// <inheritdoc/>
    public RigFaultException? SwitchOff()
    {
        _duty = 0;
        RigFaultException? fault = Stand("switched off");
        IsFailing = fault is not null;
        return fault;
    }

    private RigFaultException? Run()
    {
        if (Deed.Try(() => signal.Write(map.Of(_duty)), name, signal.Place, "set") is { } fault)
        {
            // What it does now nobody knows: the relay takes it off, and another stop is tried.
            Stand("switched off");
            return fault;
        }

        return Series(on: true, "switched");
    }

    private RigFaultException? Stand(string word)
    {
        RigFaultException? line = Series(on: false, word);
        RigFaultException? stop = Deed.Try(Still, name, signal.Place, word);
        return line ?? stop;
    }

    private void Still()
    {
        if (map.Standing == 0)
        {
            signal.MakeSafe();
        }
        else
        {
            signal.Write(map.Standing);
        }
    }

    private RigFaultException? Series(bool on, string word) =>
        series is null ? null : Deed.Try(() => series.Write(on ? 1 : 0), name, series.Place, word);
}
