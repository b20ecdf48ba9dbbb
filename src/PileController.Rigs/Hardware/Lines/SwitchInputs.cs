using System.Device.Gpio;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.Lines;

/// <summary>All switches on lines. Reading a line takes microseconds, so the tick does it itself.</summary>
internal sealed class SwitchInputs : IInputGroup
{
    private readonly GpioController _controller;
    private readonly ProbeFit[] _fits;

    /// <summary>Opens the lines of the probes that are switches.</summary>
    /// <exception cref="RigFaultException">A line cannot be opened as an input.</exception>
    public SwitchInputs(GpioController controller, IReadOnlyList<ProbeFit> probes)
    {
        _controller = controller;
        _fits = [.. probes.Where(fit => fit.Source == ProbeSource.Switch)];
        foreach (ProbeFit fit in _fits)
        {
            InputLine.Open(controller, ChannelTable.Of(fit.Channel).Name, fit.Wiring.Line!.Value);
        }
    }

    /// <inheritdoc/>
    public Task ReadAsync(Reading[] readings, CancellationToken cancellation)
    {
        foreach (ProbeFit fit in _fits)
        {
            readings[(int)fit.Channel] = Read(fit);
        }

        return Task.CompletedTask;
    }

    /// <summary>Nothing to end: the lines go with their controller.</summary>
    public void Dispose()
    {
    }

    private Reading Read(ProbeFit fit)
    {
        try
        {
            LineLevel level = _controller.Read(fit.Wiring.Line!.Value) == PinValue.High ? LineLevel.High : LineLevel.Low;
            bool well = level == fit.Wiring.WellWhen;
            return new Reading(well == ChannelKinds.IsWellWhenOne(fit.Channel) ? 1 : 0, ReadingQuality.Good, 0);
        }
        catch (Exception)
        {
            return new Reading(0, ReadingQuality.NoAnswer, 0);
        }
    }
}
