using PileController.Control.Readings;

namespace PileController.Rigs.Simulated;

/// <summary>
/// A hall flow meter: it gives whole pulses, and what is left of a pulse stays in the wheel for the next tick, so
/// that no water is lost or found by counting.
/// </summary>
internal sealed class FlowMeter
{
    private readonly double _nominalPulsesPerLitre;
    private readonly double _truePulsesPerLitre;

    /// <summary>Makes a meter.</summary>
    /// <param name="nominalPulsesPerLitre">What the reader believes, 1/L.</param>
    /// <param name="gain">What the wheel truly gives, as a factor of that.</param>
    /// <exception cref="ArgumentException">No pulses a litre.</exception>
    public FlowMeter(double nominalPulsesPerLitre, double gain)
    {
        if (!(nominalPulsesPerLitre > 0) || double.IsInfinity(nominalPulsesPerLitre))
        {
            throw new ArgumentException(
                $"PulsesPerLitre is {nominalPulsesPerLitre}; allowed is a number above 0.", nameof(nominalPulsesPerLitre));
        }

        _nominalPulsesPerLitre = nominalPulsesPerLitre;
        _truePulsesPerLitre = nominalPulsesPerLitre * gain;
    }

    /// <summary>What has been counted since the last look.</summary>
    public MeterWindow Window { get; set; }

    /// <summary>Lets water through. The first count after a look begins a new window.</summary>
    public void Count(double litres, double seconds)
    {
        double wheel = Window.Remainder + (Math.Max(0, litres) * _truePulsesPerLitre);
        double whole = Math.Floor(wheel);
        long pulses = (long)whole;
        Window = Window.Seen
            ? new MeterWindow(pulses, seconds, wheel - whole, false)
            : new MeterWindow(Window.Pulses + pulses, Window.Seconds + seconds, wheel - whole, false);
    }

    /// <summary>The flow over the window; looking twice gives the same answer.</summary>
    public Reading Look()
    {
        Window = Window with { Seen = true };
        double litresPerMinute = Window.Seconds > 0
            ? Window.Pulses * 60 / (_nominalPulsesPerLitre * Window.Seconds)
            : 0;
        return Reading.FromValue(Channel.Flow, litresPerMinute);
    }
}
