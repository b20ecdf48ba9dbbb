namespace PileController.Physics;

public static partial class Portable
{
    private const double VeltkampSplit = 134217729.0; // 2^27 + 1

    /// <summary>
    /// <paramref name="x"/> to the power <paramref name="y"/>, with the conventions of <see cref="Math.Pow"/> for zeros,
    /// infinities and negative bases. Relative error below 1e-15 while the result lies between 1e-40 and 1e40, below 4e-15 elsewhere.
    /// </summary>
    /// <param name="x">Base; a negative one needs a whole exponent, else the result is NaN.</param>
    /// <param name="y">Exponent, any number.</param>
    public static double Pow(double x, double y)
    {
        if (y == 0 || x == 1)
        {
            return 1;
        }

        if (double.IsNaN(x) || double.IsNaN(y))
        {
            return double.NaN;
        }

        double size = Math.Abs(x);
        if (size == 0 || double.IsInfinity(size) || Math.Abs(y) > 1e30)
        {
            return PowAtEdge(x, size, y);
        }

        return x > 0 ? PowOfPositive(x, y)
            : IsWhole(y) ? (IsOdd(y) ? -PowOfPositive(size, y) : PowOfPositive(size, y))
            : double.NaN;
    }

    private static double PowAtEdge(double x, double size, double y)
    {
        if (size == 1)
        {
            return 1; // −1 to a huge even (or infinite) power
        }

        double result = (size > 1) == (y > 0) ? double.PositiveInfinity : 0;
        return double.IsNegative(x) && IsOdd(y) ? -result : result;
    }

    private static bool IsWhole(double y) => Math.Floor(y) == y;

    private static bool IsOdd(double y) => Math.Abs(y % 2) == 1;

    // exp(y ln x) with the logarithm and the product each carried as an unevaluated sum of two numbers,
    // else the error of ln x would be multiplied by y.
    private static double PowOfPositive(double x, double y)
    {
        (double log, double logTail) = LogTwofold(x);
        (double product, double tail) = ProductTwofold(y, log);
        tail += y * logTail;
        double power = Exp(product);
        return power is 0 or double.PositiveInfinity ? power : power + (power * tail);
    }

    private static (double High, double Low) LogTwofold(double x)
    {
        int power = SplitPower(ref x);
        double f = x - 1;
        double divisor = x + 1;
        double divisorTail = x - (divisor - 1);
        double s = f / divisor;
        (double back, double backTail) = ProductTwofold(s, divisor);
        double sTail = (f - back - backTail - (s * divisorTail)) / divisor;
        double small = (2 * sTail) + (s * AtanhTail(s * s)) + (power * Ln2Low);
        (double sum, double sumTail) = SumTwofold(power * Ln2High, 2 * s);
        return SumTwofold(sum, sumTail + small);
    }

    // Knuth's exact sum and Dekker's exact product.
    private static (double High, double Low) SumTwofold(double a, double b)
    {
        double sum = a + b;
        double bPart = sum - a;
        return (sum, (a - (sum - bPart)) + (b - bPart));
    }

    private static (double High, double Low) ProductTwofold(double a, double b)
    {
        double product = a * b;
        double aScaled = VeltkampSplit * a;
        double aHigh = aScaled - (aScaled - a);
        double aLow = a - aHigh;
        double bScaled = VeltkampSplit * b;
        double bHigh = bScaled - (bScaled - b);
        double bLow = b - bHigh;
        return (product, (((aHigh * bHigh) - product) + (aHigh * bLow) + (aLow * bHigh)) + (aLow * bLow));
    }
}
