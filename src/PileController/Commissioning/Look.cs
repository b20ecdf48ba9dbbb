using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Commissioning;

/// <summary>What a test sees of one tick.</summary>
/// <param name="Seconds">When, s on the monotonic clock.</param>
/// <param name="Readings">What the rig said, before validation: a probe in a warm hand moves faster than a heap can.</param>
/// <param name="Outputs">What the actuators were told at this tick; the readings were taken before.</param>
/// <param name="Stop">Why nothing may be tested now, or null.</param>
internal sealed record Look(double Seconds, RigReadings Readings, Outputs Outputs, string? Stop)
{
    /// <summary>The look at a tick.</summary>
    public static Look Of(Decision decision, RigReadings raw) =>
        new(decision.At.MonotonicMilliseconds * 0.001, raw, decision.Outputs, WhyNot(decision));

    /// <summary>The value of a channel as the probe gave it; null when it gave none.</summary>
    public double? Of(Channel channel)
    {
        Reading reading = Readings[channel];
        bool measured = reading.Quality is ReadingQuality.Good or ReadingQuality.TooFast or ReadingQuality.Disagrees or ReadingQuality.Stuck;
        return measured ? reading.ValueOf(channel) : null;
    }

    private static string? WhyNot(Decision decision) => decision.Mode switch
    {
        Mode.Tripped => $"The rig is tripped: {string.Join(" ", InterlockTable.All.Zip(decision.Verdicts).Where(row => row.Second == Verdict.Latched).Select(row => row.First.Sentence))}",
        Mode.Servicing => "The outputs are locked off for work on the rig.",
        _ => null,
    };
}
