using PileController.Control.Readings;
using PileController.Physics;

namespace PileController.Control.Estimation;

/// <summary>What a belief starts from: temperatures laid through the probes, and how far anything may be off.</summary>
internal static class HeapStart
{
    private const int N = HeapBelief.Size;
    private const int Nodes = HeapShape.Nodes;

    /// <summary>How far a thermometer errs as a rule, K: half of the 0.5 °C it may (SEN-020, DS18B20 data sheet rev 042208).</summary>
    public const double ProbeSigmaK = 0.28;

    /// <summary>
    /// How far from its place a probe (or the turns it lies by) is as a rule, m (common practice, no source). With more, what the
    /// model lacks in a hard draw is put down to the place of the probe near the face, where the heap is steepest.
    /// </summary>
    public const double PlaceSigmaM = 0.02;

    // How far a heap may be from what is told or usual, one standard deviation of the logarithm: demand and permeability are
    // not told at all, the cover hardly.
    private static readonly double[] FigureSigma = [0.7, 0.6, 0.3, 1, 0.3, 0.5, 0.2, 0.3];

    // How far lines through the probes may be off, K, and over how many rings they are off alike.
    private const double LaidK = 2;
    private const double LaidRings = 4;

    /// <summary>The doubt about all that a heap of which nothing was learned yet is thought to be.</summary>
    /// <param name="p">The covariance, all zero.</param>
    public static void DoubtAll(Span<double> p)
    {
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
    }

    /// <summary>The doubt about temperatures that were laid: lines through a few probes err alike in rings that are neighbours.</summary>
    /// <param name="p">The covariance.</param>
    public static void Doubt(Span<double> p)
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

    /// <summary>Lays the temperatures through the probes.</summary>
    /// <param name="settings">What is told.</param>
    /// <param name="shape">The heap.</param>
    /// <param name="readings">Validated readings; at least one heap probe among them.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="mean">Where they go.</param>
    public static void Lay(
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
