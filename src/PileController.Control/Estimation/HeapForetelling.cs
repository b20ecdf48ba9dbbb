using PileController.Physics;

namespace PileController.Control.Estimation;

/// <summary>
/// The forward step of <see cref="HeapObserver"/>: what the model makes of the metered draw, and how much less sure everything is
/// afterwards.
/// </summary>
internal static class HeapForetelling
{
    private const double Day = 86_400;
    private const int N = HeapBelief.Size;
    private const int Nodes = HeapShape.Nodes;

    // How far what is learned of the heap may wander in a day.
    private static readonly double[] FigureDrift = [0.06, 0.03, 0.01, 0.02, 0.005, 0.02, 0.015, 0.01];

    // How long a probe's own error is remembered, days.
    private const double ForgetDays = 10;

    // What rings and laws leave out, as unexplained heat: K in a day, to a ring.
    private const double RingDriftK = 0.5;

    // The same for the bed round the pipe, which one node stands for, and the drum, K in an hour of draw.
    private const double SleeveDriftK = 1.5;
    private const double DrumDriftK = 0.7;

    // The same for the bed round the ducts, K in an hour of blowing, and from which heat on it counts whole, W.
    private const double DuctDriftK = 0.7;
    private const double WholeDuctW = 400;

    /// <summary>Takes the belief over the time of a tally.</summary>
    /// <param name="told">The heap as told.</param>
    /// <param name="tally">What was metered.</param>
    /// <param name="groundC">The ground, °C.</param>
    /// <param name="x">The means, from before to after.</param>
    /// <param name="p">Their covariance, the same.</param>
    /// <param name="spentJPerM3K">What each node's bed has lost of its heat capacity, the same; <paramref name="told"/> holds it as it was before.</param>
    /// <returns>Heat made less heat lost by itself, W.</returns>
    public static double Foretell(
        in HeapFigures told, in HeapTally tally, double groundC, double[] x, Span<double> p, Span<double> spentJPerM3K)
    {
        const int moved = HeapBelief.FirstProbe;
        Span<double> slope = stackalloc double[Nodes * moved];
        Span<double> at = stackalloc double[N];
        Span<double> tried = stackalloc double[Nodes];
        HeapFlow flow = tally.Flow;
        HeapLoad load = tally.Load(groundC);
        x.CopyTo(at);
        Span<double> next = x.AsSpan(0, Nodes);
        HeapFigures here = HeapBelief.Learned(told, at);
        double net = Step(next, here, tally, load, flow, spentJPerM3K);
        for (int j = 0; j < moved; j++)
        {
            double nudge = j < Nodes ? 0.1 : 0.02;
            at[..Nodes].CopyTo(tried);
            HeapFigures figures = here;
            if (j < Nodes)
            {
                tried[j] += nudge;
            }
            else
            {
                double kept = at[j];
                at[j] += nudge;
                figures = HeapBelief.Learned(told, at);
                at[j] = kept;
            }

            Step(tried, figures, tally, load, flow);
            for (int i = 0; i < Nodes; i++)
            {
                slope[(i * moved) + j] = (tried[i] - next[i]) / nudge;
            }
        }

        Covariance.Spread(slope, p);
        double days = tally.Seconds / Day;
        double drawing = flow.WPerK > 0 ? Math.Min(1, flow.WPerK / HeapCorrection.LeastFlowWPerK) * 24 * days : 0;
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            p[i * (N + 1)] += RingDriftK * RingDriftK * days;
        }

        p[HeapShape.Sleeve * (N + 1)] += ((RingDriftK * RingDriftK) * days) + (SleeveDriftK * SleeveDriftK * drawing);
        p[HeapShape.Drum * (N + 1)] += ((RingDriftK * RingDriftK) * days) + (DrumDriftK * DrumDriftK * drawing);
        double blowing = Math.Clamp(load.DuctWatts / WholeDuctW, 0, 1) * 24 * days;
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            p[i * (N + 1)] += DuctDriftK * DuctDriftK * blowing * told.Shape.DuctShare[i];
        }

        for (int i = 0; i < HeapBelief.Figures; i++)
        {
            p[(HeapBelief.FirstFigure + i) * (N + 1)] += FigureDrift[i] * FigureDrift[i] * days;
        }

        Forget(x, p, days);
        return net;
    }

    // What is thought a probe's own error fades towards none, and the doubt about it towards what it was at first: else the
    // filter would in time put all that the model lacks down to the probes, and be sure of it.
    private static void Forget(double[] x, Span<double> p, double days)
    {
        double kept = Portable.Exp(-days / ForgetDays);
        for (int i = HeapBelief.FirstProbe; i < N; i++)
        {
            x[i] *= kept;
            for (int j = 0; j < N; j++)
            {
                p[(i * N) + j] *= kept;
                p[(j * N) + i] *= kept;
            }

            double sigma = i < HeapBelief.FirstPlace ? HeapStart.ProbeSigmaK : HeapStart.PlaceSigmaM;
            p[i * (N + 1)] += (1 - (kept * kept)) * sigma * sigma;
        }
    }

    // The model says how coil and drum share in the draw; what was metered says how much it was.
    private static double Step(
        Span<double> t, in HeapFigures p, in HeapTally tally, in HeapLoad load, in HeapFlow flow, Span<double> spentJPerM3K = default)
    {
        double metered = 1 + ((p.InferredFlowFactor - 1) * tally.UnmeteredSeconds / tally.Seconds);
        HeapStep step = HeapRings.Step(t, p, tally.Seconds, load, flow with { WPerK = metered * flow.WPerK }, spentJPerM3K);
        double lacking = (metered * tally.WaterWatts) - step.WaterWatts;
        double whole = Math.Abs(step.CoilWatts) + Math.Abs(step.DrumWatts);
        double coil = whole > 0 ? Math.Abs(step.CoilWatts) / whole : 1;
        t[HeapShape.Sleeve] -= lacking * coil * tally.Seconds / (p.JPerM3KOf(HeapShape.Sleeve) * p.Shape.SleeveM3);
        t[HeapShape.Drum] -= lacking * (1 - coil) * tally.Seconds / p.Shape.DrumJPerK;
        return step.NetWatts;
    }
}
