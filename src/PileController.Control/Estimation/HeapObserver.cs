using PileController.Control.Readings;
using PileController.Physics;

namespace PileController.Control.Estimation;

/// <summary>
/// An extended Kalman filter over the temperatures of <see cref="HeapRings"/>, what is uncertain of the heap, and the constant
/// errors of its probes. The metered draw drives it, the probes correct it one by one.
/// </summary>
/// <remarks>
/// What says how far anything may be off or wander has no source: it was set by hand on seasons of the simulated heap, so that the
/// band holds and is not much wider than it must be.
/// </remarks>
public static class HeapObserver
{
    /// <summary>Time between updates, s.</summary>
    public const double UpdateSeconds = 600;

    private const double Day = 86_400;
    private const int N = HeapBelief.Size;
    private const int Nodes = HeapShape.Nodes;

    // How far a heap may be from what is told or usual, one standard deviation of the logarithm: demand and permeability are
    // not told at all, the cover hardly.
    private static readonly double[] FigureSigma = [0.7, 0.6, 0.3, 1, 0.3, 0.5, 0.2, 0.3];

    // How far the same may wander in a day.
    private static readonly double[] FigureDrift = [0.06, 0.03, 0.01, 0.02, 0.005, 0.02, 0.015, 0.01];

    // Bounds of the same, wider than any heap.
    private static readonly double[] FigureMost = [2.5, 2, 0.9, 4, 0.8, 1.5, 1.5, 0.8];

    // A thermometer of 0.5 °C at most errs by half that as a rule (SEN-020, DS18B20 data sheet rev 042208).
    private const double ProbeSigmaK = 0.28;

    // How far from its place a probe (or the turns it lies by) may be, m, and at most (common practice, no source).
    private const double PlaceSigmaM = 0.025;
    private const double PlaceMostM = 0.1;

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

    // Noise of a reading that does not repeat, K. It counts each update anew, so it is larger than the thermometer's own:
    // what the model lacks stays for hours.
    private const double ReadingK = 0.35;
    private const double TurnsK = 0.7;
    private const double TurnsFlowingK = 2;

    // The supply tells the drum's water but for the lines between, K.
    private const double SupplyK = 0.7;

    // Water that runs as little as this on the mean, W/K, or through a drum this small, L, tells nothing of the drum.
    private const double LeastFlowWPerK = 30;
    private const double LeastDrumLitres = 20;

    // How far lines through the probes may be off, K, and over how many rings they are off alike.
    private const double LaidK = 2;
    private const double LaidRings = 4;

    // What a stop of unknown length adds to the doubt of each temperature, K².
    private const double RestK2 = 1;

    // The first readings put right what no heat ever made.
    private const double MostPutRightW = 1500;

    // Over how long net heat, what is put right of it, and surprise are means, s.
    private const double NetSeconds = Day / 6;
    private const double PutRightSeconds = 2 * Day;
    private const double SurpriseSeconds = Day;

    // A probe this surprising counts for less the more it surprises. What the model lacks is in the variances, so that a sound
    // probe stays below this (0.3 at most in seasons of the simulated heap).
    private const double SureSurprise = 0.3;

    // A probe whose own error is past belief counts for next to nothing till that thought has faded.
    private const double PastBelief = 100;

    /// <summary>A first belief from a profile of the probes.</summary>
    /// <param name="settings">What is told.</param>
    /// <param name="shape">The heap.</param>
    /// <param name="readings">Validated readings; at least one heap probe among them.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    public static HeapBelief First(ControlSettings settings, HeapShape shape, RigReadings readings, double outsideC)
    {
        double[] mean = new double[N];
        double[] upper = new double[HeapBelief.UpperSize];
        Span<double> p = stackalloc double[N * N];
        Doubt(p);
        for (int i = 0; i < HeapBelief.Figures; i++)
        {
            p[(HeapBelief.FirstFigure + i) * (N + 1)] = FigureSigma[i] * FigureSigma[i];
        }

        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            p[(HeapBelief.FirstProbe + i) * (N + 1)] = ProbeSigmaK * ProbeSigmaK;
            p[(HeapBelief.FirstPlace + i) * (N + 1)] = PlaceSigmaM * PlaceSigmaM;
        }

        Lay(settings, shape, readings, outsideC, mean);
        Covariance.Pack(p, upper);
        return new HeapBelief { Mean = mean, Upper = upper };
    }

    /// <summary>The temperatures anew from the probes, with what was learned of the heap kept.</summary>
    /// <param name="before">What was believed.</param>
    /// <param name="settings">What is told.</param>
    /// <param name="shape">The heap.</param>
    /// <param name="readings">Validated readings; at least one heap probe among them.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    public static HeapBelief Again(HeapBelief before, ControlSettings settings, HeapShape shape, RigReadings readings, double outsideC)
    {
        double[] mean = [.. before.Mean];
        Span<double> p = stackalloc double[N * N];
        Covariance.Unpack(before.Upper, p);
        for (int i = 0; i < Nodes; i++)
        {
            for (int j = 0; j < N; j++)
            {
                p[(i * N) + j] = p[(j * N) + i] = 0;
            }
        }

        Doubt(p);
        Lay(settings, shape, readings, outsideC, mean);
        double[] upper = new double[HeapBelief.UpperSize];
        Covariance.Pack(p, upper);
        return before with { Mean = mean, Upper = upper, Surprise = new double[HeapBelief.Probes] };
    }

    /// <summary>The same belief after a time of which nothing is known: the temperatures are less sure.</summary>
    /// <param name="before">What was believed.</param>
    public static HeapBelief Rested(HeapBelief before)
    {
        ArgumentNullException.ThrowIfNull(before);
        double[] upper = [.. before.Upper];
        int at = 0;
        for (int i = 0; i < Nodes; i++)
        {
            upper[at] += RestK2;
            at += N - i;
        }

        return before with { Upper = upper };
    }

    /// <summary>Takes in what was metered and what the probes say now.</summary>
    /// <param name="settings">What is told.</param>
    /// <param name="shape">The heap, cut from the same.</param>
    /// <param name="before">What was believed.</param>
    /// <param name="tally">What was metered since.</param>
    /// <param name="readings">Validated readings.</param>
    public static HeapBelief Update(
        ControlSettings settings, HeapShape shape, HeapBelief before, in HeapTally tally, RigReadings readings)
    {
        double[] x = [.. before.Mean];
        double[] surprise = [.. before.Surprise];
        Span<double> p = stackalloc double[N * N];
        Covariance.Unpack(before.Upper, p);
        HeapFigures told = HeapFigures.Told(settings, shape);
        double net = Predict(told, tally, settings.House.GroundC, x, p);
        HeapFigures figures = HeapBelief.Learned(told, x);
        double foretoldJ = HeapRings.Stored(x, figures);
        Correct(settings, shape, tally, readings, x, p, surprise);
        // What the probes put right was made or lost as well.
        double putRight = Math.Clamp((HeapRings.Stored(x, figures) - foretoldJ) / tally.Seconds, -MostPutRightW, MostPutRightW);
        for (int i = 0; i < HeapBelief.Figures; i++)
        {
            double most = FigureMost[i];
            x[HeapBelief.FirstFigure + i] = Math.Clamp(x[HeapBelief.FirstFigure + i], -most, most);
        }

        for (int i = 0; i < N; i++)
        {
            x[i] = Math.Round(x[i], Covariance.KeptDigits);
        }

        double[] upper = new double[HeapBelief.UpperSize];
        Covariance.Pack(p, upper);
        double share = before.ModelW == 0 ? 1 : Math.Min(1, tally.Seconds / NetSeconds);
        return new HeapBelief
        {
            Mean = x,
            Upper = upper,
            Surprise = surprise,
            ModelW = before.ModelW + (share * (net - before.ModelW)),
            PutRightW = before.PutRightW + (Math.Min(1, tally.Seconds / PutRightSeconds) * (putRight - before.PutRightW)),
        };
    }

    private static double Predict(in HeapFigures told, in HeapTally tally, double groundC, double[] x, Span<double> p)
    {
        const int moved = HeapBelief.FirstProbe;
        Span<double> slope = stackalloc double[Nodes * moved];
        Span<double> at = stackalloc double[N];
        Span<double> tried = stackalloc double[Nodes];
        HeapFlow flow = tally.Flow;
        HeapLoad load = tally.Load(groundC);
        x.CopyTo(at);
        Span<double> next = x.AsSpan(0, Nodes);
        double net = Step(next, HeapBelief.Learned(told, at), tally, load, flow);
        HeapFigures here = HeapBelief.Learned(told, at);
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
        double drawing = flow.WPerK > 0 ? Math.Min(1, flow.WPerK / LeastFlowWPerK) * 24 * days : 0;
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            p[i * (N + 1)] += RingDriftK * RingDriftK * days;
        }

        p[HeapShape.Sleeve * (N + 1)] += ((RingDriftK * RingDriftK) * days) + (SleeveDriftK * SleeveDriftK * drawing);
        p[HeapShape.Drum * (N + 1)] += ((RingDriftK * RingDriftK) * days) + (DrumDriftK * DrumDriftK * drawing);
        double blowing = Math.Clamp(load.DuctWatts / WholeDuctW, 0, 1) * 24 * days;
        p[told.Shape.DuctRing * (N + 1)] += DuctDriftK * DuctDriftK * blowing;
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

            double sigma = i < HeapBelief.FirstPlace ? ProbeSigmaK : PlaceSigmaM;
            p[i * (N + 1)] += (1 - (kept * kept)) * sigma * sigma;
        }
    }

    // The model says how coil and drum share in the draw; what was metered says how much it was.
    private static double Step(Span<double> t, in HeapFigures p, in HeapTally tally, in HeapLoad load, in HeapFlow flow)
    {
        double metered = 1 + ((p.InferredFlowFactor - 1) * tally.UnmeteredSeconds / tally.Seconds);
        HeapStep step = HeapRings.Step(t, p, tally.Seconds, load, flow with { WPerK = metered * flow.WPerK });
        double lacking = (metered * tally.WaterWatts) - step.WaterWatts;
        double whole = Math.Abs(step.CoilWatts) + Math.Abs(step.DrumWatts);
        double coil = whole > 0 ? Math.Abs(step.CoilWatts) / whole : 1;
        t[HeapShape.Sleeve] -= lacking * coil * tally.Seconds / (p.JPerM3K * p.Shape.SleeveM3);
        t[HeapShape.Drum] -= lacking * (1 - coil) * tally.Seconds / p.Shape.DrumJPerK;
        return step.NetWatts;
    }

    private static void Correct(
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

    // Lines through a few probes err alike in rings that are neighbours.
    private static void Doubt(Span<double> p)
    {
        for (int i = 0; i < Nodes; i++)
        {
            for (int j = 0; j < Nodes; j++)
            {
                bool rings = i < HeapShape.Rings && j < HeapShape.Rings;
                p[(i * N) + j] = i == j ? LaidK * LaidK : rings ? LaidK * LaidK * Portable.Exp(-Math.Abs(i - j) / LaidRings) : 0;
            }
        }
    }

    private static void Lay(
        ControlSettings settings, HeapShape shape, RigReadings readings, double outsideC, double[] mean)
    {
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            mean[i] = ProbeLines.At(settings.Places, readings, outsideC, shape.CentreM(i));
        }

        mean[HeapShape.Drum] = mean[0];
        mean[HeapShape.Sleeve] = readings.TryGet(Channel.HeapTurns, out double turns) ? turns : mean[shape.CoilRing];
    }
}
