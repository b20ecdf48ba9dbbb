using PileController.Control.Decisions;
using PileController.Control.Estimation;

namespace PileController.Control.Means;

/// <summary>What the heap can bear.</summary>
/// <param name="FrostW">The draw allowed to keep plants from frost, W.</param>
/// <param name="ComfortW">The draw allowed for comfort, W: what is left after a reserve for colder hours.</param>
public readonly record struct HeapMeans(double FrostW, double ComfortW);

/// <summary>
/// What the heap holds above its floor, less a margin for what the estimate may be wrong by, over the time in which it may
/// be spent. Comfort spends what lies above the season's reserve within half a day. Against frost it may go as fast as
/// coil and ducts can take it: in a cold spell every joule is worth the same whenever it comes, and one that stays in the
/// heap when the spell ends has been of no use. An estimate in doubt is met with a slower
/// pace and a wider margin. It is found anew each tick, so the draw slows as the floor comes near.
/// </summary>
public static class MeansRule
{
    // What the draw takes on after it is told to stop, and what the roll to rest foretells too little (from seasons of the
    // simulated heap, one told 40 % more than it holds among them).
    private const double AfterfallKelvin = 0.25;

    // Beyond that a heap would keep back for the guard what the guard will never ask.
    private const double MostGuardKelvin = 5;

    /// <summary>Against frost the draw is held back only within so many hours of the floor.</summary>
    internal const double FrostHours = 3;

    /// <summary>Comfort takes what lies above the season's reserve within half a day, h.</summary>
    internal const double ComfortHours = 12;

    // With an estimate that is not to be trusted the reserve is spent over this share of the look-ahead, and a little more
    // of it is kept.
    private const double DoubtPace = 0.3;
    private const double DoubtKelvin = 1.5;

    // In doubt comfort leaves so much more, K: a hot autumn heap that stood idle for a probe half a degree off would burn the
    // fuel of the coldest weeks (from seasons of the simulated holding).
    private const double DoubtReserveKelvin = 8;

    // A cool heap makes less heat: the promise of the net heat counts for less the nearer the floor is.
    private const double FullTrustKelvin = 8;

    /// <summary>Finds the means.</summary>
    /// <param name="settings">What is known of the heap.</param>
    /// <param name="estimate">What is believed of it.</param>
    /// <param name="leastZoneC">What the active zone would come to at rest, °C; see <see cref="RestRoll"/>.</param>
    /// <param name="reserveKelvin">What comfort leaves, K above the floor.</param>
    /// <param name="guardJ">What the frost guard may come to take of the store, J; see <see cref="Foresight.GuardRule"/>.</param>
    public static HeapMeans Of(ControlSettings settings, in HeapEstimate estimate, double leastZoneC, double reserveKelvin, double guardJ)
    {
        double above = Math.Min(leastZoneC, estimate.ActiveZoneCelsius) - settings.HeapFloorC - MarginKelvin(settings, estimate, guardJ);
        double capacity = Estimator.BodyCapacityShare * settings.HeapHeatCapacityJPerK;
        double trust = Math.Clamp(above / FullTrustKelvin, 0, 1);
        double net = estimate.GenerationWatts > 0 ? trust * estimate.GenerationWatts : estimate.GenerationWatts;
        double spent = estimate.Trusted
            ? FrostWatts(capacity, above)
            : capacity * above / (Math.Max(FrostHours, DoubtPace * settings.LookAheadHours) * 3600);
        double frost = Math.Max(0, net + spent);
        double spare = SpareKelvin(settings, estimate, reserveKelvin);
        double comfort = spare <= 0 ? 0 : Math.Max(0, estimate.GenerationWatts + (capacity * spare / (ComfortHours * 3600)));
        return above <= 0 ? default : new HeapMeans(frost, Math.Min(frost, comfort));
    }

    /// <summary>How far the active zone stands above what comfort leaves, K; below it, less than 0.</summary>
    /// <param name="settings">What is known of the heap.</param>
    /// <param name="estimate">What is believed of it.</param>
    /// <param name="reserveKelvin">What comfort leaves of a heap that is not in doubt, K above the floor.</param>
    internal static double SpareKelvin(ControlSettings settings, in HeapEstimate estimate, double reserveKelvin)
    {
        double doubt = estimate.Trusted ? 0 : DoubtReserveKelvin + (Quantile(settings.Confidence) * estimate.UncertaintyKelvin);
        return estimate.ActiveZoneCelsius - settings.HeapFloorC - reserveKelvin - doubt;
    }

    /// <summary>What is kept above the floor, K: for what the estimate may be wrong by, and for what the zone still falls by itself.</summary>
    internal static double MarginKelvin(ControlSettings settings, in HeapEstimate estimate, double guardJ) =>
        (estimate.Trusted ? AfterfallKelvin : DoubtKelvin) + (Quantile(settings.Confidence) * estimate.UncertaintyKelvin)
        + GuardKelvin(settings, guardJ);

    // What the guard takes for the lines comes out of the heap, however low it stands: it has to be there.
    private static double GuardKelvin(ControlSettings settings, double guardJ) =>
        Math.Clamp(guardJ / (Estimator.BodyCapacityShare * settings.HeapHeatCapacityJPerK), 0, MostGuardKelvin);

    /// <summary>What may be drawn against frost of the heat stored so far above the margin, W.</summary>
    /// <param name="capacityJPerK">Heat capacity of the inner body, J/K.</param>
    /// <param name="aboveKelvin">How far the active zone stands above floor and margin, K.</param>
    internal static double FrostWatts(double capacityJPerK, double aboveKelvin) => capacityJPerK * aboveKelvin / (FrostHours * 3600);

    /// <summary>Standard deviations to one side for a confidence, 0.5 to 0.999 (linear between published points of the normal distribution).</summary>
    public static double Quantile(double confidence)
    {
        ReadOnlySpan<double> p = [0.5, 0.8, 0.9, 0.95, 0.975, 0.99, 0.999];
        ReadOnlySpan<double> z = [0, 0.8416, 1.2816, 1.6449, 1.96, 2.3263, 3.0902];
        for (int i = 1; i < p.Length; i++)
        {
            if (confidence <= p[i])
            {
                return z[i - 1] + ((confidence - p[i - 1]) / (p[i] - p[i - 1]) * (z[i] - z[i - 1]));
            }
        }

        return z[^1];
    }
}
