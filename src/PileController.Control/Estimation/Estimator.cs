using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>
/// A small observer of the heap: the inner body as one store, fed by an unknown net heat and emptied by the metered
/// draw. Probes correct both. With any probe missing it goes on; with all missing it predicts, and soon says so.
/// </summary>
public static class Estimator
{
    private const double Day = 86_400;
    private const double LitMilliseconds = 86_400_000;

    // Share of the heap's heat capacity that lies in the inner body.
    internal const double BodyCapacityShare = 0.65;

    // How fast the estimate follows the probes, and the net heat what is left over, s.
    private const double FollowSeconds = 3 * 3600;
    private const double NetSeconds = 2 * Day;

    // After a restart what was believed before holds if the probes are this near to it, K.
    private const double RestartKelvin = 3;

    // Noise of the profile by straight lines through four probes, K (from seasons of the simulated heap).
    private const double ProfileSigmaKelvin = 0.6;

    /// <summary>Takes in one tick.</summary>
    /// <param name="settings">What is known of the heap.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="drawWatts">Metered draw of the tick before, W.</param>
    /// <param name="seconds">Time since that tick, s.</param>
    /// <param name="at">Now.</param>
    public static (HeapEstimate Estimate, EstimatorMemory Memory) Step(
        ControlSettings settings, in EstimatorMemory memory, RigReadings readings, double drawWatts, double seconds, Instant at)
    {
        double outside = readings.TryGet(Channel.Outside, out double measured) ? measured : memory.OutsideC;
        HeapProfile profile = HeapProfile.From(settings.Places, readings, outside);
        double capacity = BodyCapacityShare * settings.HeapHeatCapacityJPerK;
        double body = memory.BodyC;
        double zone = memory.ActiveZoneC;
        double net = memory.NetW;
        double variance = memory.VarianceK2;
        if (profile.ProbesUsed > 0 && !memory.Started && !Bears(memory, profile))
        {
            body = profile.BodyC;
            zone = profile.ActiveZoneC;
            variance = 4;
        }
        else
        {
            double rise = (net - drawWatts) * seconds / capacity;
            body += rise;
            zone += rise;
            variance += seconds * 4 / Day;
            if (profile.ProbesUsed > 0)
            {
                // Fewer probes pull more gently.
                double trust = 0.25 * profile.ProbesUsed;
                double pull = trust * seconds / FollowSeconds;
                double surprise = profile.BodyC - body;
                body += pull * surprise;
                zone += pull * (profile.ActiveZoneC - zone);
                net += trust * seconds * capacity * surprise / (FollowSeconds * NetSeconds);
                net = Math.Clamp(net, -3000, 5000);
                double seen = ProfileSigmaKelvin * ProfileSigmaKelvin / trust;
                variance += pull * (seen - variance);
            }
        }

        long hotSince = zone >= settings.HeapLitC
            ? (memory.HotSinceMilliseconds >= 0 ? memory.HotSinceMilliseconds : at.MonotonicMilliseconds)
            : -1;
        bool lit = memory.Lit || (hotSince >= 0 && at.MonotonicMilliseconds - hotSince >= LitMilliseconds);
        bool started = memory.Started || profile.ProbesUsed > 0;
        EstimatorMemory next = new(body, zone, net, variance, outside, hotSince, lit, started);
        HeapEstimate estimate = new(
            profile.ProbesUsed > 0 ? profile.CoreC : body,
            zone,
            profile.ProbesUsed > 0 ? profile.TurnsC : body,
            Math.Sqrt(variance),
            net,
            capacity * (Math.Min(zone, body) - settings.HeapFloorC),
            (net - drawWatts) * Day / capacity,
            lit,
            started && profile.ProbesUsed >= 2);
        return (estimate, next);
    }

    // One probe alone cannot refute an estimate that four have made.
    private static bool Bears(in EstimatorMemory memory, in HeapProfile profile) =>
        memory.VarianceK2 < EstimatorMemory.Fresh.VarianceK2
        && (profile.ProbesUsed < 2 || Math.Abs(profile.BodyC - memory.BodyC) <= RestartKelvin);
}
