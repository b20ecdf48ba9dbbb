using Microsoft.Extensions.Time.Testing;

namespace PileController.Rigs.Tests.Hardware.Lines;

/// <summary>A meter's wheel on a line: lets simulated time pass in steps of at most 20 ms and sets the level as it turns.</summary>
internal sealed class FakeWheel(FakeLines lines, int line, FakeTimeProvider time)
{
    private static readonly double MostStepSeconds = 0.02;

    private double _turns;

    /// <summary>Pulses since the start.</summary>
    public double Pulses => _turns;

    /// <summary>Share of each pulse at which the level is high.</summary>
    public double HighShare { get; init; } = 0.5;

    /// <summary>Turns for a while at a rate.</summary>
    /// <param name="seconds">How long.</param>
    /// <param name="pulsesPerSecond">How fast.</param>
    public void Turn(double seconds, double pulsesPerSecond)
    {
        double left = seconds;
        while (left > 1e-9)
        {
            // To the next change of the level, or a step at rest.
            double phase = _turns - Math.Floor(_turns);
            double toChange = phase < HighShare ? HighShare - phase : 1 - phase;
            double step = Math.Min(Math.Min(left, MostStepSeconds), pulsesPerSecond > 0 ? (toChange / pulsesPerSecond) + 1e-7 : MostStepSeconds);
            _turns += step * pulsesPerSecond;
            left -= step;
            time.Advance(TimeSpan.FromSeconds(step));
            lines.Set(line, _turns - Math.Floor(_turns) < HighShare);
        }
    }
}
