using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>The other half of <see cref="HeapObserver"/>: what was foretold is put right by each probe, as far as it is trusted.</summary>
internal static class HeapCorrection
{
    private const int N = HeapBelief.Size;

    // How far from its place a probe may be at most, m (common practice, no source).
    private const double PlaceMostM = 0.1;

    // Noise of a reading that does not repeat, K. It counts each update anew, so it is larger than the thermometer's own:
    // what the model lacks stays for hours.
    private const double ReadingK = 0.35;
    private const double TurnsK = 0.7;
    private const double TurnsFlowingK = 2;

    // The supply tells the drum's water but for the lines between, K.
    private const double SupplyK = 0.7;

    /// <summary>Water that runs as little as this on the mean, W/K, tells nothing of the drum.</summary>
    public const double LeastFlowWPerK = 30;

    // Neither does a drum this small, L.
    private const double LeastDrumLitres = 20;

    // Over how long surprise is a mean, s.
    private const double SurpriseSeconds = 86_400;

    // A probe this surprising counts for less the more it surprises. What the model lacks is in the variances, so that a sound
    // probe stays below this (0.3 at most in seasons of the simulated heap).
    private const double SureSurprise = 0.3;

    // A probe whose own error is past belief counts for next to nothing till that thought has faded.
    private const double PastBelief = 100;

    /// <summary>Takes in what the probes say.</summary>
    /// <param name="settings">What is told.</param>
    /// <param name="shape">The heap.</param>
    /// <param name="tally">What was metered since the last time.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="x">The means, from foretold to put right.</param>
    /// <param name="p">Their covariance, the same.</param>
    /// <param name="surprise">How far each probe lay off, the same.</param>
    public static void Correct(
        ControlSettings settings, HeapShape shape, in HeapTally tally, RigReadings readings, double[] x, Span<double> p,
        double[] surprise)
    {
        Span<double> h = stackalloc double[N];
        bool flows = tally.Flow.WPerK > 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            if (!readings.TryGet(ProbeSight.ChannelOf(i), out double value))
            {
                continue;
            }

            double foretold = ProbeSight.See(settings, shape, i, x, h) + x[HeapBelief.FirstProbe + i];
            double sigma = i == 2 ? (flows ? TurnsFlowingK : TurnsK) : ReadingK;
            double off = surprise[i] / SureSurprise;
            double doubt = HeapBelief.PastBelief(x[HeapBelief.FirstProbe + i]) ? Math.Max(PastBelief, off * off) : Math.Max(1, off * off);
            double squared = Covariance.Take(h, value - foretold, sigma * sigma * doubt, x, p);
            x[HeapBelief.FirstPlace + i] = Math.Clamp(x[HeapBelief.FirstPlace + i], -PlaceMostM, PlaceMostM);
            double share = Math.Min(1, tally.Seconds / SurpriseSeconds);
            surprise[i] += share * (Math.Min(squared * doubt, 100) - surprise[i]);
        }

        HeapFlow flow = tally.Flow;
        if (flow.WPerK > LeastFlowWPerK && settings.DrumLitres > LeastDrumLitres && tally.BlindSeconds == 0)
        {
            h.Clear();
            h[HeapShape.Drum] = 1;
            Covariance.Take(h, flow.ReturnC + (tally.WaterWatts / flow.WPerK) - x[HeapShape.Drum], SupplyK * SupplyK, x, p);
        }
    }
}
