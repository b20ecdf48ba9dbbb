using PileController.Control.Decisions;
using PileController.Control.Metering;
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

    // Share of the heap's heat capacity that lies in the inner body.
    internal const double BodyCapacityShare = 0.65;

    // A chilled bed has drunk its fill within a day.
    private const double SettlingHours = 24;

    // After a restart what was believed before holds if the probes are this near to it on the mean, K.
    private const double RestartKelvin = 3;

    // What the true hottest half differs from that of rings, K, whatever the filter says; and how much more for each e-fold by
    // which the heap proves unlike the one told: rings tell such a heap less well. With these the band that should hold 95 %
    // holds 98 % of the time in seasons of sixteen rigs, and as often in twelve with the heap drawn from its spreads.
    private const double CutKelvin = 0.15;
    private const double UnlikeKelvin = 0.4;

    // An estimate less sure than this is none, K.
    private const double MostSigmaKelvin = 4;

    // Most probes this surprising on the mean of a day refute what is believed.
    private const double RefutingSurprise = 2;

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
        HeapBelief? held = memory.Belief is { Fits: true } ? memory.Belief : null;
        HeapTold told = memory.Told with { Belief = held };
        HeapTally tally = Add(settings, memory.Tally, readings, draw, blowerDuty, outside, seconds);
        int probes = Probes(readings);
        if (probes > 0 && (!told.Started || held is null))
        {
            HeapShape shape = new(settings);
            HeapBelief belief = held is null ? HeapObserver.First(settings, shape, readings, outside)
                : Bears(settings, shape, held, readings, probes) ? HeapObserver.Rested(held)
                : HeapObserver.Again(held, settings, shape, readings, outside);
            told = Told(settings, shape, told with { Started = true }, belief, outside);
            tally = default;
        }
        else if (held is not null && tally.Seconds >= HeapObserver.UpdateSeconds)
        {
            HeapShape shape = new(settings);
            HeapBelief belief = HeapObserver.Update(settings, shape, held, tally, readings);
            belief = Refuted(belief, readings) ? HeapObserver.Again(belief, settings, shape, readings, outside) : belief;
            told = Told(settings, shape, told, belief, outside);
            tally = default;
        }

        long hotSince = told.ActiveZoneC >= settings.HeapLitC
            ? (told.HotSinceMilliseconds >= 0 ? told.HotSinceMilliseconds : at.MonotonicMilliseconds)
            : -1;
        bool lit = told.Lit || (hotSince >= 0 && at.MonotonicMilliseconds - hotSince >= LitMilliseconds);
        told = told with { HotSinceMilliseconds = hotSince, Lit = lit };
        return (
            Estimate(settings, told, readings, draw.WaterWatts + draw.AirWatts),
            memory with { Told = told, OutsideC = outside, Tally = tally });
    }

    private static HeapEstimate Estimate(
        ControlSettings settings, in HeapTold now, RigReadings readings, double drawWatts)
    {
        double sigma = Math.Sqrt(now.VarianceK2);
        double capacity = BodyCapacityShare * settings.HeapHeatCapacityJPerK;
        bool trusted = false;
        if (now.Belief is { } belief)
        {
            capacity *= belief.CapacityFactor;
            trusted = now.Started && sigma <= MostSigmaKelvin && Corroboration.Holds(belief, readings);
        }

        return new HeapEstimate(
            now.CoreC, now.ActiveZoneC, now.TurnsC, sigma, now.NetW, capacity * (Math.Min(now.ActiveZoneC, now.BodyC) - settings.HeapFloorC),
            (now.NetW - drawWatts) * Day / capacity, now.Lit, trusted);
    }

    // One probe may have failed; where most of them say otherwise it is the belief that is wrong.
    private static bool Refuted(HeapBelief belief, RigReadings readings)
    {
        int odd = 0;
        int good = 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            bool read = readings.TryGet(ProbeSight.ChannelOf(i), out _);
            good += read ? 1 : 0;
            odd += read && belief.Surprise[i] > RefutingSurprise ? 1 : 0;
        }

        return odd >= 2 && 2 * odd > good;
    }

    // What the belief says of the heap as a whole; found once an update.
    private static HeapTold Told(
        ControlSettings settings, HeapShape shape, in HeapTold before, HeapBelief belief, double outsideC)
    {
        Span<double> weights = stackalloc double[HeapShape.Nodes];
        Span<double> h = stackalloc double[HeapBelief.Size];
        double zone = HeapRings.ActiveZone(belief.Mean, shape, weights);
        double unlike = UnlikeKelvin * belief.Unlikeness;
        double variance = Covariance.Variance(belief, weights) + (CutKelvin * CutKelvin) + (unlike * unlike);
        return before with
        {
            ActiveZoneC = zone,
            BodyC = HeapRings.Body(belief.Mean, shape),
            CoreC = ProbeSight.See(settings, shape, 0, belief.Mean, h),
            TurnsC = ProbeSight.See(settings, shape, 2, belief.Mean, h),
            NetW = belief.NetW,
            VarianceK2 = variance,
            Belief = belief,
            LeastZoneC = RestRoll.LeastZoneC(
                belief.Mean, belief.Learned(HeapFigures.Told(settings, shape)), outsideC, settings.House.GroundC, Math.Min(SettlingHours, settings.LookAheadHours)),
        };
    }

    private static HeapTally Add(
        ControlSettings settings, in HeapTally tally, RigReadings readings, in MeteredDraw draw, double blowerDuty, double outsideC,
        double seconds)
    {
        double carried = draw.FlowLitresPerMinute * Carriers.WaterJPerLK / 60 * seconds;
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
            tally.UnmeteredSeconds + (readings.TryGet(Channel.Flow, out _) ? 0 : seconds),
            tally.BlindSeconds + (readings.TryGet(Channel.Supply, out _) && readings.TryGet(Channel.Return, out _) ? 0 : seconds));
    }

    private static int Probes(RigReadings readings)
    {
        int used = 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            used += readings.TryGet(ProbeSight.ChannelOf(i), out _) ? 1 : 0;
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
            if (readings.TryGet(ProbeSight.ChannelOf(i), out double value))
            {
                double off = value - ProbeSight.See(settings, shape, i, belief.Mean, h);
                squares += off * off;
            }
        }

        return probes < 2 || squares <= probes * RestartKelvin * RestartKelvin;
    }
}
