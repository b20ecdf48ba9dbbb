using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Control.Metering;

/// <summary>Adds up what was taken and what it cost in electricity.</summary>
public static class Totaliser
{
    private const double SilentWatts = 0.5;

    /// <summary>The totals after one more tick.</summary>
    /// <param name="totals">The totals before.</param>
    /// <param name="settings">What is told of pump and blower, for where their meters are missing.</param>
    /// <param name="draw">The draw of this tick.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="running">What the actuators were told the tick before.</param>
    /// <param name="seconds">Length of the tick, s.</param>
    public static Totals Add(
        in Totals totals, ControlSettings settings, in MeteredDraw draw, RigReadings readings, in Outputs running, double seconds)
    {
        double pump = Watts(readings, Channel.PumpPower, settings.PumpWatts, running.PumpDuty);
        double blower = Watts(readings, Channel.BlowerPower, settings.BlowerWatts, running.BlowerDuty);
        return new Totals(
            totals.WaterJoules + (draw.WaterWatts * seconds),
            totals.WaterErrorJoules + (draw.WaterErrorWatts * seconds),
            totals.AirJoules + (draw.AirWatts * seconds),
            totals.PumpJoules + (pump * seconds),
            totals.BlowerJoules + (blower * seconds),
            totals.Litres + (draw.FlowLitresPerMinute * seconds / 60));
    }

    private static double Watts(RigReadings readings, Channel meter, double fullWatts, double duty)
    {
        if (!readings.TryGet(meter, out double watts))
        {
            return fullWatts * duty * duty * duty;
        }

        // The noise of a meter at rest is no consumption; over a season it would add up to some.
        return duty > 0 || watts >= SilentWatts ? watts : 0;
    }
}
