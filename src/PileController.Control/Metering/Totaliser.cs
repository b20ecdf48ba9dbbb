using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Control.Metering;

/// <summary>Adds up what was taken and what it cost in electricity.</summary>
public static class Totaliser
{
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
        double pump = readings.TryGet(Channel.PumpPower, out double pumpWatts)
            ? pumpWatts
            : settings.PumpWatts * running.PumpDuty * running.PumpDuty * running.PumpDuty;
        double blower = readings.TryGet(Channel.BlowerPower, out double blowerWatts)
            ? blowerWatts
            : settings.BlowerWatts * running.BlowerDuty * running.BlowerDuty * running.BlowerDuty;
        return new Totals(
            totals.WaterJoules + (draw.WaterWatts * seconds),
            totals.WaterErrorJoules + (draw.WaterErrorWatts * seconds),
            totals.AirJoules + (draw.AirWatts * seconds),
            totals.PumpJoules + (pump * seconds),
            totals.BlowerJoules + (blower * seconds),
            totals.Litres + (draw.FlowLitresPerMinute * seconds / 60));
    }
}
