namespace PileController.Control.Estimation;

/// <summary>The algebra of the observer's covariance, whole or as the upper triangle that is kept.</summary>
internal static class Covariance
{
    /// <summary>Decimals that are kept: short in writing, and far finer than anything that matters.</summary>
    public const int KeptDigits = 10;

    private const int N = HeapBelief.Size;
    private const int Nodes = HeapShape.Nodes;

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

    // P ← F·P·Fᵀ, F being the slopes for the temperatures and unity for all else.
    public static void Spread(ReadOnlySpan<double> slope, Span<double> p)
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

    // One reading, how far it lay off what was foretold and its slopes. Returns that squared, in variances.
    public static double Take(ReadOnlySpan<double> h, double off, double variance, double[] x, Span<double> p)
    {
        Span<double> ph = stackalloc double[N];
        double s = variance;
        for (int i = 0; i < N; i++)
        {
            double sum = 0;
            for (int j = 0; j < N; j++)
            {
                sum += p[(i * N) + j] * h[j];
            }

            ph[i] = sum;
            s += h[i] * sum;
        }

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

    public static void Unpack(double[] upper, Span<double> p)
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

    public static void Pack(ReadOnlySpan<double> p, double[] upper)
    {
        int at = 0;
        for (int i = 0; i < N; i++)
        {
            for (int j = i; j < N; j++)
            {
                upper[at++] = Math.Round(p[(i * N) + j], KeptDigits);
            }
        }
    }
}
