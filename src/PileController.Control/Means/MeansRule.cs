using PileController.Control.Decisions;
using PileController.Control.Estimation;

namespace PileController.Control.Means;

/// <summary>What the heap can bear.</summary>
/// <param name="FrostW">The draw allowed to keep plants from frost, W.</param>
/// <param name="ComfortW">The draw allowed for comfort, W: what is left after a reserve for colder hours.</param>
public readonly record struct HeapMeans(double FrostW, double ComfortW);

/// <summary>
/// The first form of the means: a draw that would spend what the heap holds above its floor, less a margin for what the
/// estimate may be wrong by, within the look-ahead. Comfort spends it over the whole of it and has to leave a reserve;
/// against frost it may go faster. It is found anew each tick, so the draw slows as the floor comes near.
/// </summary>
/// <remarks>
/// The lower of active zone and body counts: heat taken at the turns is felt by the active zone a day later, when the
/// cold bed has drunk from its neighbours.
/// </remarks>
public static class MeansRule
{
    // What the active zone still falls once the means are nil: the cold bed drinks on, and the frost guard takes its part
    // (from seasons of the simulated heap).
    private const double AfterfallKelvin = 1.5;

    // Against frost the reserve may be spent in this share of the look-ahead: a cold snap is shorter than that.
    private const double FrostPace = 0.3;

    // A cool heap makes less heat: the promise of the net heat counts for less the nearer the floor is.
    private const double FullTrustKelvin = 8;

    /// <summary>Finds the means.</summary>
    /// <param name="settings">What is known of the heap.</param>
    /// <param name="estimate">What is believed of it.</param>
    /// <param name="bodyC">Estimate of the inner body's mean, °C.</param>
    public static HeapMeans Of(ControlSettings settings, in HeapEstimate estimate, double bodyC)
    {
        double margin = AfterfallKelvin + (Quantile(settings.Confidence) * estimate.UncertaintyKelvin);
        double above = Math.Min(estimate.ActiveZoneCelsius, bodyC) - settings.HeapFloorC - margin;
        double capacity = Estimator.BodyCapacityShare * settings.HeapHeatCapacityJPerK;
        double seconds = settings.LookAheadHours * 3600;
        double trust = Math.Clamp(above / FullTrustKelvin, 0, 1);
        double net = estimate.GenerationWatts > 0 ? trust * estimate.GenerationWatts : estimate.GenerationWatts;
        double frost = Math.Max(0, net + (capacity * above / (FrostPace * seconds)));
        double comfort = Math.Max(0, net + (capacity * (above - settings.ComfortReserveKelvin) / seconds));
        return above <= 0 ? default : new HeapMeans(frost, Math.Min(frost, comfort));
    }

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
