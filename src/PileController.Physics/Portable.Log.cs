using System.Runtime.CompilerServices;

namespace PileController.Physics;

public static partial class Portable
{
    private const double OverLn10 = 0.4342944819032518;

    /// <summary>Natural logarithm: −infinity at 0, NaN below it and for NaN.</summary>
    /// <param name="x">Argument, 0 or more.</param>
    public static double Log(double x)
    {
        if (!(x > 0) || double.IsPositiveInfinity(x))
        {
            return x == 0 ? double.NegativeInfinity : x > 0 ? x : double.NaN;
        }

        int power = SplitPower(ref x);
        double f = x - 1;
        double s = f / (2 + f);
        double halfSquare = 0.5 * f * f;
        double series = AtanhTail(s * s);
        // ln(1+f) = f − (f²/2 − s (f²/2 + series)): the large part f enters without rounding.
        return (power * Ln2High) - ((halfSquare - ((s * (halfSquare + series)) + (power * Ln2Low))) - f);
    }

    /// <summary>Logarithm to base ten; edges as <see cref="Log"/>, within 3 units in the last place.</summary>
    /// <param name="x">Argument, 0 or more.</param>
    public static double Log10(double x) => Log(x) * OverLn10;

    /// <summary>Takes the power of two out of a positive number and leaves it between √½ and √2.</summary>
    private static int SplitPower(ref double x)
    {
        int extra = 0;
        if (x < 2.2250738585072014e-308)
        {
            x *= 18014398509481984.0; // 2^54: lifts a subnormal number among the normal ones
            extra = -54;
        }

        long bits = BitConverter.DoubleToInt64Bits(x);
        int power = unchecked((int)(bits >> 52)) - 1023;
        double mantissa = BitConverter.Int64BitsToDouble((bits & 0x000FFFFFFFFFFFFF) | 0x3FF0000000000000);
        if (mantissa > 1.4142135623730951)
        {
            mantissa *= 0.5;
            power++;
        }

        x = mantissa;
        return power + extra;
    }

    // 2 atanh(s)/s − 2 = 2/3 z + 2/5 z² + …, z = s² ≤ 0.0295; the first term left out is below 2e-18.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double AtanhTail(double z)
    {
        double z2 = z * z;
        double z4 = z2 * z2;
        double a = (2.0 / 3 + (z * (2.0 / 5))) + (z2 * (2.0 / 7 + (z * (2.0 / 9))));
        double b = (2.0 / 11 + (z * (2.0 / 13))) + (z2 * (2.0 / 15 + (z * (2.0 / 17))));
        double c = 2.0 / 19 + (z * (2.0 / 21));
        return z * (a + (z4 * (b + (z4 * c))));
    }
}
