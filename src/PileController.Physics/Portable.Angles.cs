using System.Runtime.CompilerServices;

namespace PileController.Physics;

public static partial class Portable
{
    /// <summary>Largest angle <see cref="Sin"/> and <see cref="Cos"/> take, rad.</summary>
    public const double LargestAngle = 1e6;

    // π/2 in parts of 33 bits: a whole number below 2^20 times the first two is exact.
    private const double HalfPi1 = 1.5707963267341256;
    private const double HalfPi2 = 6.077100506303966e-11;
    private const double HalfPi3 = 2.0222662487959506e-21;
    private const double OverHalfPi = 0.6366197723675814;

    /// <summary>Sine; NaN for NaN and infinities.</summary>
    /// <param name="x">Angle, rad, at most <see cref="LargestAngle"/> either side of zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is larger than that.</exception>
    public static double Sin(double x)
    {
        int quarter = Reduce(x, out double r, out double tail);
        double value = (quarter & 1) == 0 ? SinNearZero(r, tail) : CosNearZero(r, tail);
        return (quarter & 2) == 0 ? value : -value;
    }

    /// <summary>Cosine; NaN for NaN and infinities.</summary>
    /// <param name="x">Angle, rad, at most <see cref="LargestAngle"/> either side of zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is larger than that.</exception>
    public static double Cos(double x)
    {
        int quarter = Reduce(x, out double r, out double tail);
        double value = (quarter & 1) == 0 ? CosNearZero(r, tail) : SinNearZero(r, tail);
        return ((quarter + 1) & 2) == 0 ? value : -value;
    }

    /// <summary>Tangent; NaN for NaN and infinities. Within 4 units in the last place.</summary>
    /// <param name="x">Angle, rad, at most <see cref="LargestAngle"/> either side of zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is larger than that.</exception>
    public static double Tan(double x) => Sin(x) / Cos(x);

    private static int Reduce(double x, out double r, out double tail)
    {
        if (!double.IsFinite(x))
        {
            r = tail = double.NaN;
            return 0;
        }

        if (Math.Abs(x) > LargestAngle)
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, $"An angle must lie within ±{LargestAngle} rad.");
        }

        double shifted = (x * OverHalfPi) + RoundShift;
        double whole = shifted - RoundShift;
        (double near, double nearTail) = SumTwofold(x - (whole * HalfPi1), -(whole * HalfPi2));
        (r, tail) = SumTwofold(near, nearTail - (whole * HalfPi3));
        return unchecked((int)BitConverter.DoubleToInt64Bits(shifted)) & 3;
    }

    // Taylor series of sine to r^17 and cosine to r^16 for |r| ≤ π/4; the terms left out are below 7e-17 of the value.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double SinNearZero(double r, double tail)
    {
        double z = r * r;
        double z2 = z * z;
        double a = (-1.0 / 6 + (z * (1.0 / 120))) + (z2 * (-1.0 / 5040 + (z * (1.0 / 362880))));
        double b = (-1.0 / 39916800 + (z * (1.0 / 6227020800))) + (z2 * (-1.0 / 1307674368000 + (z * (1.0 / 355687428096000))));
        return r + ((r * z * (a + (z2 * z2 * b))) + (tail * (1 - (0.5 * z))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double CosNearZero(double r, double tail)
    {
        double z = r * r;
        double z2 = z * z;
        double half = 0.5 * z;
        double lead = 1 - half;
        double a = (1.0 / 24 + (z * (-1.0 / 720))) + (z2 * (1.0 / 40320 + (z * (-1.0 / 3628800))));
        double b = (1.0 / 479001600 + (z * (-1.0 / 87178291200))) + (z2 * (1.0 / 20922789888000));
        return lead + (((1 - lead) - half) + ((z2 * (a + (z2 * z2 * b))) - (r * tail)));
    }
}
