using PileController.Control.Readings;

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

    // Bounds of what is learned of the heap, wider than any heap.
    private static readonly double[] FigureMost = [2.5, 2, 0.9, 4, 0.8, 1.5, 1.5, 0.8];

    // What a stop of unknown length adds to the doubt of each temperature, K².
    private const double RestK2 = 1;

    // The first readings put right what no heat ever made.
    private const double MostPutRightW = 1500;

    // More heat capacity no bed loses by drying and burning, nor gains, as a share of what was told.
    private const double MostSpentShare = 0.6;

    // No heap that lives is as cold as this in its hottest half, °C (common practice, no source): one that has lost more than
    // this share of its heat capacity and is has gone quiet for good, and the next one that warms was built anew.
    private const double QuietC = 25;
    private const double OldShare = 0.02;

    // An update takes some tens of J/(m³·K).
    private const int SpentDigits = 2;

    // Over how long net heat and what is put right of it are means, s.
    private const double NetSeconds = Day / 6;
    private const double PutRightSeconds = 2 * Day;

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
        HeapStart.DoubtAll(p);
        HeapStart.Lay(settings, shape, readings, outsideC, mean);
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

        HeapStart.Doubt(p);
        HeapStart.Lay(settings, shape, readings, outsideC, mean);
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
        double[] spent = [.. before.SpentJPerM3K];
        HeapFigures told = HeapFigures.Told(settings, shape) with { SpentJPerM3K = before.SpentJPerM3K };
        double net = HeapForetelling.Foretell(told, tally, settings.House.GroundC, x, p, spent);
        HeapFigures figures = HeapBelief.Learned(told, x);
        double foretoldJ = HeapRings.Stored(x, figures);
        HeapCorrection.Correct(settings, shape, tally, readings, x, p, surprise);

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

        bool builtAnew = spent.Max() > OldShare * told.JPerM3K && HeapRings.ActiveZone(x, shape) < QuietC;
        double mostSpent = builtAnew ? 0 : MostSpentShare * told.JPerM3K;
        for (int i = 0; i < Nodes; i++)
        {
            spent[i] = Math.Clamp(Math.Round(spent[i], SpentDigits), -mostSpent, mostSpent);
        }

        double[] upper = new double[HeapBelief.UpperSize];
        Covariance.Pack(p, upper);
        double share = before.ModelW == 0 ? 1 : Math.Min(1, tally.Seconds / NetSeconds);
        return new HeapBelief
        {
            Mean = x,
            Upper = upper,
            Surprise = surprise,
            SpentJPerM3K = spent,
            ModelW = before.ModelW + (share * (net - before.ModelW)),
            PutRightW = before.PutRightW + (Math.Min(1, tally.Seconds / PutRightSeconds) * (putRight - before.PutRightW)),
        };
    }
}
