using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>
/// Hands the observer what it needs and tells what it believes. Between two updates of the observer a tick costs some sums:
/// the draw is tallied, the estimate stands.
/// </summary>
public static class Estimator
{
    private const double Day = 86_400;
    private const double LitMilliseconds = 86_400_000;
    private const double WaterJPerL = 4170;

    // Share of the heap's heat capacity that lies in the inner body.
    internal const double BodyCapacityShare = 0.65;

    // After a restart what was believed before holds if the probes are this near to it on the mean, K.
    private const double RestartKelvin = 3;

    // What the true hottest half differs from that of rings, K, whatever the filter says.
    private const double CutKelvin = 0.25;

    // An estimate less sure than this is none, K.
    private const double MostSigmaKelvin = 4;

    // Probes this far off on the mean of a day, squared and in variances, say that the model does not hold.
    private const double MostSurprise = 9;

    /// <summary>Takes in one tick.</summary>
    /// <param name="settings">What is known of the heap.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="draw">Metered draw of the tick before.</param>
    /// <param name="blowerDuty">What the blower was told the tick before, 0 to 1.</param>
    /// <param name="seconds">Time since that tick, s.</param>
    /// <param name="at">Now.</param>
    public static (HeapEstimate Estimate, EstimatorMemory Memory) Step(
        ControlSettings settings, in EstimatorMemory memory, RigReadings readings, in MeteredDraw draw, double blowerDuty,
        double seconds, Instant at)
    {
        double outside = readings.TryGet(Channel.Outside, out double measured) ? measured : memory.OutsideC;
        EstimatorMemory now = memory with
        {
            OutsideC = outside,
            Tally = Add(settings, memory.Tally, readings, draw, blowerDuty, outside, seconds),
        };
        int probes = Probes(readings);
        if (probes > 0 && !memory.Started)
        {
            HeapShape shape = new(settings);
            HeapBelief belief = memory.Belief is null ? HeapObserver.First(settings, shape, readings, outside)
                : Bears(settings, shape, memory.Belief, readings, probes) ? memory.Belief
                : HeapObserver.Again(memory.Belief, settings, shape, readings, outside);
            now = Told(settings, shape, now with { Started = true, Tally = default }, belief);
        }
        else if (memory.Belief is not null && now.Tally.Seconds >= HeapObserver.UpdateSeconds)
        {
            HeapShape shape = new(settings);
            now = Told(
                settings, shape, now with { Tally = default },
                HeapObserver.Update(settings, shape, memory.Belief, now.Tally, readings));
        }

        long hotSince = now.ActiveZoneC >= settings.HeapLitC
            ? (memory.HotSinceMilliseconds >= 0 ? memory.HotSinceMilliseconds : at.MonotonicMilliseconds)
            : -1;
        bool lit = memory.Lit || (hotSince >= 0 && at.MonotonicMilliseconds - hotSince >= LitMilliseconds);
        now = now with { HotSinceMilliseconds = hotSince, Lit = lit };
        return (Estimate(settings, now, draw.WaterWatts + draw.AirWatts, probes), now);
    }

    private static HeapEstimate Estimate(ControlSettings settings, in EstimatorMemory now, double drawWatts, int probes)
    {
        double sigma = Math.Sqrt(now.VarianceK2);
        double capacity = BodyCapacityShare * settings.HeapHeatCapacityJPerK;
        double turns = now.BodyC;
        double core = now.BodyC;
        bool trusted = false;
        if (now.Belief is { } belief)
        {
            turns = now.TurnsC;
            core = now.CoreC;
            trusted = now.Started && probes >= 2 && sigma <= MostSigmaKelvin && belief.MeanSurprise <= MostSurprise;
        }

        return new HeapEstimate(
            core, now.ActiveZoneC, turns, sigma, now.NetW, capacity * (Math.Min(now.ActiveZoneC, now.BodyC) - settings.HeapFloorC),
            (now.NetW - drawWatts) * Day / capacity, now.Lit, trusted);
    }

    // What the belief says of the heap as a whole; found once an update.
    private static EstimatorMemory Told(ControlSettings settings, HeapShape shape, in EstimatorMemory memory, HeapBelief belief)
    {
        Span<double> weights = stackalloc double[HeapShape.Nodes];
        Span<double> h = stackalloc double[HeapBelief.Size];
        double zone = HeapRings.ActiveZone(belief.Mean, shape, weights);
        double variance = HeapObserver.Variance(belief, weights) + (CutKelvin * CutKelvin);
        return memory with
        {
            ActiveZoneC = zone,
            BodyC = HeapRings.Body(belief.Mean, shape),
            CoreC = HeapObserver.Foretold(settings, shape, belief, 0, h),
            TurnsC = HeapObserver.Foretold(settings, shape, belief, 2, h),
            NetW = belief.NetW,
            VarianceK2 = variance,
            Belief = belief,
            LeastZoneC = RestRoll.LeastZoneC(
                belief.Mean, belief.Learned(HeapFigures.Told(settings, shape)), memory.OutsideC, settings.House.GroundC, settings.LookAheadHours),
        };
    }

    private static HeapTally Add(
        ControlSettings settings, in HeapTally tally, RigReadings readings, in MeteredDraw draw, double blowerDuty, double outsideC,
        double seconds)
    {
        double carried = draw.FlowLitresPerMinute * WaterJPerL / 60 * seconds;
        double back = readings.TryGet(Channel.Return, out double measured) ? measured
            : readings.TryGet(Channel.House, out double house) ? house + 5 : settings.HouseDayC;
        bool through = settings.BlowerFitted && settings.DuctWPerK <= 0;
        return new HeapTally(
            tally.Seconds + seconds,
            tally.WaterJ + (draw.WaterWatts * seconds),
            tally.FlowJPerK + carried,
            tally.ReturnJ + (carried * back),
            tally.DuctJ + (through ? 0 : draw.AirWatts * seconds),
            tally.BlownM3 + (through ? blowerDuty * settings.BlowerFullFlowM3PerS * seconds : 0),
            tally.OutsideKelvinSeconds + (outsideC * seconds),
            tally.InferredSeconds + (draw.Inferred ? seconds : 0));
    }

    private static int Probes(RigReadings readings)
    {
        int used = 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            used += readings.TryGet(HeapObserver.ChannelOf(i), out _) ? 1 : 0;
        }

        return used;
    }

    // One probe alone cannot refute an estimate that four have made.
    private static bool Bears(ControlSettings settings, HeapShape shape, HeapBelief belief, RigReadings readings, int probes)
    {
        Span<double> h = stackalloc double[HeapBelief.Size];
        double squares = 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            if (readings.TryGet(HeapObserver.ChannelOf(i), out double value))
            {
                double off = value - HeapObserver.Foretold(settings, shape, belief, i, h);
                squares += off * off;
            }
        }

        return probes < 2 || squares <= probes * RestartKelvin * RestartKelvin;
    }
}
