using System.Device.Gpio;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.Lines;

/// <summary>The flow meter on its pulse line, when one is fitted.</summary>
internal sealed class PulseInputs : IInputGroup
{
    // A gate that closed so lately is of this tick.
    private static readonly TimeSpan Now = TimeSpan.FromSeconds(2);

    private static readonly TimeSpan Fresh = TimeSpan.FromSeconds(15);

    private readonly List<(Channel Channel, PulseMeter Meter)> _meters = [];
    private readonly double _pulsesPerLitre;
    private readonly TimeProvider _time;

    /// <summary>Opens the line of each probe that gives pulses.</summary>
    /// <exception cref="RigFaultException">A line cannot be opened as an input, or gives no edges.</exception>
    public PulseInputs(GpioController controller, RigSettings settings, TimeProvider time, Action<string> report)
    {
        _pulsesPerLitre = settings.PulsesPerLitre;
        _time = time;
        foreach (ProbeFit fit in settings.Probes.Where(fit => fit.Source == ProbeSource.Pulses))
        {
            double most = fit.Wiring.MostPulsesPerSecond ?? ProbeWiring.UsualMostPulsesPerSecond;
            string name = ChannelTable.Of(fit.Channel).Name;
            _meters.Add((fit.Channel, new PulseMeter(controller, name, fit.Wiring.Line!.Value, most, time, report)));
        }
    }

    /// <inheritdoc/>
    public Task ReadAsync(Reading[] readings, CancellationToken cancellation)
    {
        foreach ((Channel channel, PulseMeter meter) in _meters)
        {
            readings[(int)channel] = Shown(channel, meter.Look());
        }

        return Task.CompletedTask;
    }

    /// <summary>Stops counting.</summary>
    public void Dispose() => _meters.ForEach(meter => meter.Meter.Dispose());

    private Reading Shown(Channel channel, PulseRate? rate)
    {
        if (rate is null)
        {
            return new Reading(0, ReadingQuality.NoAnswer, 0);
        }

        // A gate that does not close any more: the timer stands still, or the machine does.
        TimeSpan age = _time.GetElapsedTime(rate.EndedAt);
        ReadingQuality quality = rate.Bounced ? ReadingQuality.OutOfRange : age > Fresh ? ReadingQuality.Late : ReadingQuality.Good;
        int milliseconds = age <= Now ? 0 : (int)Math.Min(age.TotalMilliseconds, int.MaxValue);
        return Reading.FromValue(channel, rate.PerSecond * 60 / _pulsesPerLitre, quality, milliseconds);
    }
}
