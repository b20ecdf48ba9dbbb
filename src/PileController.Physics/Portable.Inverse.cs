namespace PileController.Physics;

public static partial class Portable
{
    private const double HalfPi = Math.PI / 2;
    private const double QuarterPi = Math.PI / 4;
    private const double TanOfEighthTurn = 0.4142135623730951; // tan(π/8) = √2 − 1

    /// <summary>Arc tangent, rad, −π/2 to π/2.</summary>
    /// <param name="x">Any number.</param>
    public static double Atan(double x)
    {
        double size = Math.Abs(x);
        double angle = size > 1 ? HalfPi - AtanUpToOne(1 / size) : AtanUpToOne(size);
        return double.IsNegative(x) ? -angle : angle;
    }

    /// <summary>Angle of the point (x, y) from the x axis, rad, −π to π; 0 for the origin.</summary>
    /// <param name="y">Ordinate, finite.</param>
    /// <param name="x">Abscissa, finite.</param>
    public static double Atan2(double y, double x)
    {
        if (x == 0)
        {
            return y == 0 ? 0 : y > 0 ? HalfPi : y < 0 ? -HalfPi : double.NaN;
        }

        double angle = Atan(y / x);
        return x > 0 ? angle : double.IsNegative(y) ? angle - Math.PI : angle + Math.PI;
    }

    /// <summary>Arc sine, rad, −π/2 to π/2; NaN outside −1 to 1.</summary>
    /// <param name="x">Sine, −1 to 1.</param>
    public static double Asin(double x) => Atan2(x, Math.Sqrt((1 - x) * (1 + x)));

    /// <summary>Arc cosine, rad, 0 to π; NaN outside −1 to 1.</summary>
    /// <param name="x">Cosine, −1 to 1.</param>
    public static double Acos(double x) => Atan2(Math.Sqrt((1 - x) * (1 + x)), x);

    private static double AtanUpToOne(double x) =>
        x > TanOfEighthTurn ? QuarterPi + AtanSeries((x - 1) / (x + 1)) : AtanSeries(x);

    // Gregory's series to x^43 for |x| ≤ tan(π/8); the term left out is below 1e-18.
    private static double AtanSeries(double x)
    {
        double z = -(x * x);
        double sum = 0;
        for (int n = 43; n >= 3; n -= 2)
        {
            sum = z * ((1.0 / n) + sum);
        }

        return x + (x * sum);
    }
}
