using PileController.Physics;

namespace PileController.Control.Foresight;

/// <summary>The bell curve.</summary>
internal static class Bell
{
    /// <summary>Standard deviations to the tenth and to the ninetieth in a hundred.</summary>
    public const double Tenth = 1.2816;

    /// <summary>Share of a normal distribution that lies below so many standard deviations (Abramowitz and Stegun 1964, 26.2.17: within 1e-7; coefficients from memory, held to published points by a test).</summary>
    public static double Below(double sigmas)
    {
        double x = Math.Abs(sigmas);
        double t = 1 / (1 + (0.2316419 * x));
        double tail = 0.3989422804 * Portable.Exp(-0.5 * x * x)
            * t * (0.319381530 + (t * (-0.356563782 + (t * (1.781477937 + (t * (-1.821255978 + (t * 1.330274429))))))));
        return sigmas < 0 ? tail : 1 - tail;
    }
}
