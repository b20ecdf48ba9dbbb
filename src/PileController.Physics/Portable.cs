using System.Runtime.CompilerServices;

namespace PileController.Physics;

/// <summary>
/// Elementary functions from + − × ÷ √ and bit patterns alone. The framework's own call the C library of the machine,
/// whose last bit differs between processors; these give the same bits everywhere, so a simulated season can be
/// repeated anywhere. Within about 2 units in the last place of the true value unless a member says otherwise.
/// </summary>
public static partial class Portable
{
    // ln 2 in two parts: the first has 33 significant bits, so that a whole number below 2^20 times it is exact.
    private const double Ln2High = 0.6931471804855391;
    private const double Ln2Low = 7.440617110012397e-11;
    private const double OverLn2 = 1.4426950408889634;

    // Adding 1.5·2^52 leaves the nearest whole number in the low bits of the pattern.
    private const double RoundShift = 6755399441055744.0;

    private const double LargestExpArgument = 709.782712893384;
    private const double SmallestExpArgument = -745.1332191019412;

    /// <summary>e to the power <paramref name="x"/>: 0 far below, infinity above 709.78, NaN for NaN.</summary>
    /// <param name="x">Exponent, any number.</param>
    public static double Exp(double x)
    {
        if (!(x <= LargestExpArgument))
        {
            return double.IsNaN(x) ? x : double.PositiveInfinity;
        }

        if (x < SmallestExpArgument)
        {
            return 0;
        }

        double shifted = (x * OverLn2) + RoundShift;
        int power = unchecked((int)BitConverter.DoubleToInt64Bits(shifted));
        double whole = shifted - RoundShift;
        double rest = (x - (whole * Ln2High)) - (whole * Ln2Low);
        return Scale(1 + ExpMinusOneNearZero(rest), power);
    }

    /// <summary>e to the power <paramref name="x"/>, less one, without the cancellation near zero.</summary>
    /// <param name="x">Exponent, any number.</param>
    public static double ExpMinusOne(double x) => Math.Abs(x) < 0.34 ? ExpMinusOneNearZero(x) : Exp(x) - 1;

    // The exponential series to r^13 for |r| ≤ ½ ln 2, paired so that the sums run side by side; the term left out is below 4e-18.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double ExpMinusOneNearZero(double r)
    {
        double r2 = r * r;
        double r4 = r2 * r2;
        double low = (1.0 / 2 + (r * (1.0 / 6))) + (r2 * (1.0 / 24 + (r * (1.0 / 120))));
        double mid = (1.0 / 720 + (r * (1.0 / 5040))) + (r2 * (1.0 / 40320 + (r * (1.0 / 362880))));
        double high = (1.0 / 3628800 + (r * (1.0 / 39916800))) + (r2 * (1.0 / 479001600 + (r * (1.0 / 6227020800))));
        return r + (r2 * (low + (r4 * (mid + (r4 * high)))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Scale(double value, int power)
    {
        if (power is > -1021 and < 1023)
        {
            return value * PowerOfTwo(power);
        }

        int half = power / 2;
        return value * PowerOfTwo(half) * PowerOfTwo(power - half);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double PowerOfTwo(int power) => BitConverter.Int64BitsToDouble(unchecked((long)(power + 1023) << 52));
}
