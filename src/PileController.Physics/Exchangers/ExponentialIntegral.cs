namespace PileController.Physics.Exchangers;

/// <summary>The exponential integral E₁, which the line source needs.</summary>
public static class ExponentialIntegral
{
    private const double EulerGamma = 0.57721566490153286;

    /// <summary>E₁(x) = ∫ₓ^∞ e^(−t)/t dt, within 1e-12 of itself.</summary>
    /// <param name="x">Above 0.</param>
    public static double E1(double x)
    {
        Require.Positive(x, "(argument)");
        return x <= 1.5 ? BySeries(x) : ByContinuedFraction(x);
    }

    // −γ − ln x + x − x²/(2·2!) + x³/(3·3!) − …
    private static double BySeries(double x)
    {
        double sum = -EulerGamma - Portable.Log(x);
        double term = -1;
        for (int n = 1; n <= 25; n++)
        {
            term *= -x / n;
            sum += term / n;
        }

        return sum;
    }

    // e^(−x) / (x + 1 − 1²/(x + 3 − 2²/(x + 5 − …))), evaluated from the inside out.
    private static double ByContinuedFraction(double x)
    {
        double tail = 0;
        for (int n = 60; n >= 1; n--)
        {
            tail = n * n / (x + (2 * n) + 1 - tail);
        }

        return Portable.Exp(-x) / (x + 1 - tail);
    }
}
