using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>
/// An extended Kalman filter over the temperatures of <see cref="HeapRings"/>, what is uncertain of the heap, and the constant
/// errors of its probes. The metered draw drives it, the probes correct it one by one.
/// </summary>
public static class HeapObserver
{
    /// <summary>Time between updates, s.</summary>
    public const double UpdateSeconds = 600;

    private const double Day = 86_400;
    private const int N = HeapBelief.Size;
    private const int Nodes = HeapShape.Nodes;

    // How far a heap may be from what is told or usual, one standard deviation of the logarithm: demand and permeability are
    // not told at all, the cover hardly.
    private static readonly double[] FigureSigma = [0.7, 0.6, 0.3, 0.6, 0.3, 0.5];

    // How far the same may wander in a day.
    private static readonly double[] FigureDrift = [0.06, 0.03, 0.01, 0.04, 0.005, 0.02];

    // Bounds of the logarithms.
    private static readonly double[] FigureMost = [2.5, 2, 0.9, 2.5, 0.8, 1.5];

    // A thermometer of 0.5 °C at most errs by half that as a rule (SEN-020, DS18B20 data sheet rev 042208).
    private const double ProbeSigmaK = 0.28;

    // What rings and laws leave out, as unexplained heat: K in a day, to a ring.
    private const double RingDriftK = 0.35;

    // The same for the bed round the pipe, which one node stands for, and the drum, K in an hour of draw.
    private const double SleeveDriftK = 1.5;
    private const double DrumDriftK = 0.7;

    // Noise of a reading that does not repeat, K. It counts each update anew, so it is larger than the thermometer's own:
    // what the model lacks stays for hours.
    private const double ReadingK = 0.35;
    private const double TurnsK = 0.7;
    private const double TurnsFlowingK = 2;

    // The supply tells the drum's water but for the lines between, K.
    private const double SupplyK = 0.7;

    // The probe at the turns sits a few centimetres from the pipe: mostly in the sleeve.
    private const double TurnsSleeveShare = 0.7;

    private const double NetSeconds = Day / 2;
    private const double SurpriseSeconds = Day;
    private const double SureSurprise = 4;

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
        for (int i = 0; i < Nodes; i++)
        {
            p[i * (N + 1)] = 4;
        }

        for (int i = 0; i < HeapBelief.Figures; i++)
        {
            p[(HeapBelief.FirstFigure + i) * (N + 1)] = FigureSigma[i] * FigureSigma[i];
        }

        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            p[(HeapBelief.FirstProbe + i) * (N + 1)] = ProbeSigmaK * ProbeSigmaK;
        }

        Lay(settings, shape, readings, outsideC, mean);
        Pack(p, upper);
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
        Unpack(before.Upper, p);
        for (int i = 0; i < Nodes; i++)
        {
            for (int j = 0; j < N; j++)
            {
                p[(i * N) + j] = p[(j * N) + i] = i == j ? 4 : 0;
            }
        }

        Lay(settings, shape, readings, outsideC, mean);
        double[] upper = new double[HeapBelief.UpperSize];
        Pack(p, upper);
        return before with { Mean = mean, Upper = upper };
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
        Unpack(before.Upper, p);
        HeapFigures told = HeapFigures.Told(settings, shape);
        double net = Predict(told, tally, settings.House.GroundC, x, p);
        Correct(settings, shape, tally, readings, x, p, surprise);
        for (int i = 0; i < HeapBelief.Figures; i++)
        {
            double most = FigureMost[i];
            x[HeapBelief.FirstFigure + i] = Math.Clamp(x[HeapBelief.FirstFigure + i], -most, most);
        }

        double[] upper = new double[HeapBelief.UpperSize];
        Pack(p, upper);
        double share = Math.Min(1, tally.Seconds / NetSeconds);
        return new HeapBelief
        {
            Mean = x,
            Upper = upper,
            Surprise = surprise,
            NetW = before.NetW == 0 ? net : before.NetW + (share * (net - before.NetW)),
        };
    }

    /// <summary>Variance of a weighted sum of the temperatures.</summary>
    /// <param name="belief">What is believed.</param>
    /// <param name="weights">Weights, one a temperature.</param>
    public static double Variance(HeapBelief belief, ReadOnlySpan<double> weights)
    {
        ArgumentNullException.ThrowIfNull(belief);
        double sum = 0;
        int row = 0;
        for (int i = 0; i < Nodes; i++)
        {
            for (int j = i; j < Nodes; j++)
            {
                sum += (i == j ? 1 : 2) * weights[i] * weights[j] * belief.Upper[row + j - i];
            }

            row += N - i;
        }

        return Math.Max(0, sum);
    }

    /// <summary>The temperature at a probe's place, its own error left out, °C.</summary>
    internal static double Foretold(ControlSettings settings, HeapShape shape, HeapBelief belief, int probe, Span<double> h)
    {
        See(settings, shape, probe, h);
        double sum = 0;
        for (int i = 0; i < Nodes; i++)
        {
            sum += h[i] * belief.Mean[i];
        }

        return sum;
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

        Spread(slope, p);
        double days = tally.Seconds / Day;
        double drawing = flow.WPerK > 0 ? Math.Min(1, flow.WPerK / 30) * 24 * days : 0;
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            p[i * (N + 1)] += RingDriftK * RingDriftK * days;
        }

        p[HeapShape.Sleeve * (N + 1)] += ((RingDriftK * RingDriftK) * days) + (SleeveDriftK * SleeveDriftK * drawing);
        p[HeapShape.Drum * (N + 1)] += ((RingDriftK * RingDriftK) * days) + (DrumDriftK * DrumDriftK * drawing);
        for (int i = 0; i < HeapBelief.Figures; i++)
        {
            p[(HeapBelief.FirstFigure + i) * (N + 1)] += FigureDrift[i] * FigureDrift[i] * days;
        }

        return net;
    }

    // The model says how coil and drum share in the draw; what was metered says how much it was.
    private static double Step(Span<double> t, in HeapFigures p, in HeapTally tally, in HeapLoad load, in HeapFlow flow)
    {
        HeapStep step = HeapRings.Step(t, p, tally.Seconds, load, flow);
        double lacking = tally.WaterWatts - step.WaterWatts;
        double whole = Math.Abs(step.CoilWatts) + Math.Abs(step.DrumWatts);
        double coil = whole > 0 ? Math.Abs(step.CoilWatts) / whole : 1;
        t[HeapShape.Sleeve] -= lacking * coil * tally.Seconds / (p.JPerM3K * p.Shape.SleeveM3);
        t[HeapShape.Drum] -= lacking * (1 - coil) * tally.Seconds / p.Shape.DrumJPerK;
        return step.NetWatts;
    }

    // P ← F·P·Fᵀ, F being the slopes for the temperatures and unity for all else.
    private static void Spread(ReadOnlySpan<double> slope, Span<double> p)
    {
        const int moved = HeapBelief.FirstProbe;
        Span<double> half = stackalloc double[Nodes * N];
        for (int i = 0; i < Nodes; i++)
        {
            for (int k = 0; k < moved; k++)
            {
                double s = slope[(i * moved) + k];
                for (int j = 0; j < N; j++)
                {
                    half[(i * N) + j] += s * p[(k * N) + j];
                }
            }
        }

        for (int i = 0; i < Nodes; i++)
        {
            for (int j = Nodes; j < N; j++)
            {
                p[(i * N) + j] = p[(j * N) + i] = half[(i * N) + j];
            }

            for (int j = i; j < Nodes; j++)
            {
                double sum = 0;
                for (int k = 0; k < moved; k++)
                {
                    sum += half[(i * N) + k] * slope[(j * moved) + k];
                }

                p[(i * N) + j] = p[(j * N) + i] = sum;
            }
        }
    }

    private static void Correct(
        ControlSettings settings, HeapShape shape, in HeapTally tally, RigReadings readings, double[] x, Span<double> p,
        double[] surprise)
    {
        Span<double> h = stackalloc double[N];
        bool flows = tally.Flow.WPerK > 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            if (!readings.TryGet(ChannelOf(i), out double value))
            {
                continue;
            }

            See(settings, shape, i, h);
            double sigma = i == 2 ? (flows ? TurnsFlowingK : TurnsK) : ReadingK;
            double doubt = Math.Max(1, surprise[i] / SureSurprise);
            double squared = Take(h, value, sigma * sigma * doubt, x, p);
            double share = Math.Min(1, tally.Seconds / SurpriseSeconds);
            surprise[i] += share * (Math.Min(squared * doubt, 100) - surprise[i]);
        }

        HeapFlow flow = tally.Flow;
        if (flow.WPerK > 30 && settings.DrumLitres > 20 && tally.InferredSeconds == 0)
        {
            h.Clear();
            h[HeapShape.Drum] = 1;
            Take(h, flow.ReturnC + (tally.WaterWatts / flow.WPerK), SupplyK * SupplyK, x, p);
        }
    }

    // One reading: h·x foretells it. Returns how far off it was, squared, in variances.
    private static double Take(ReadOnlySpan<double> h, double value, double variance, double[] x, Span<double> p)
    {
        Span<double> ph = stackalloc double[N];
        double s = variance;
        double foretold = 0;
        for (int i = 0; i < N; i++)
        {
            double sum = 0;
            for (int j = 0; j < N; j++)
            {
                sum += p[(i * N) + j] * h[j];
            }

            ph[i] = sum;
            s += h[i] * sum;
            foretold += h[i] * x[i];
        }

        double off = value - foretold;
        double gain = 1 / s;
        for (int i = 0; i < N; i++)
        {
            x[i] += ph[i] * gain * off;
            for (int j = i; j < N; j++)
            {
                p[(i * N) + j] = p[(j * N) + i] = p[(i * N) + j] - (ph[i] * ph[j] * gain);
            }
        }

        return off * off * gain;
    }

    internal static Channel ChannelOf(int probe) => probe switch
    {
        0 => Channel.HeapCore,
        1 => Channel.HeapMiddle,
        2 => Channel.HeapTurns,
        _ => Channel.HeapEdge,
    };

    // What a probe sees of the temperatures, and its own error.
    internal static void See(ControlSettings settings, HeapShape shape, int probe, Span<double> h)
    {
        h.Clear();
        h[HeapBelief.FirstProbe + probe] = 1;
        HeapProbePlaces places = settings.Places;
        double radius = probe switch { 0 => places.CoreM, 1 => places.MiddleM, 2 => places.TurnsM, _ => places.EdgeM };
        if (probe == 2 && shape.RingAt(radius) == shape.CoilRing)
        {
            h[HeapShape.Sleeve] = TurnsSleeveShare;
            h[shape.CoilRing] = 1 - TurnsSleeveShare;
            return;
        }

        Between(shape, radius, h);
    }

    private static void Between(HeapShape shape, double radius, Span<double> h)
    {
        int i = 0;
        while (i < HeapShape.Rings - 2 && radius > shape.CentreM(i + 1))
        {
            i++;
        }

        double place = Math.Clamp((radius - shape.CentreM(i)) / (shape.CentreM(i + 1) - shape.CentreM(i)), 0, 1);
        h[i] += 1 - place;
        h[i + 1] += place;
    }

    private static void Lay(
        ControlSettings settings, HeapShape shape, RigReadings readings, double outsideC, double[] mean)
    {
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            mean[i] = HeapProfile.AtRadius(settings.Places, readings, outsideC, shape.CentreM(i));
        }

        mean[HeapShape.Drum] = mean[0];
        mean[HeapShape.Sleeve] = readings.TryGet(Channel.HeapTurns, out double turns) ? turns : mean[shape.CoilRing];
    }

    internal static void Unpack(double[] upper, Span<double> p)
    {
        int at = 0;
        for (int i = 0; i < N; i++)
        {
            for (int j = i; j < N; j++)
            {
                p[(i * N) + j] = p[(j * N) + i] = upper[at++];
            }
        }
    }

    private static void Pack(ReadOnlySpan<double> p, double[] upper)
    {
        int at = 0;
        for (int i = 0; i < N; i++)
        {
            for (int j = i; j < N; j++)
            {
                upper[at++] = p[(i * N) + j];
            }
        }
    }
}
