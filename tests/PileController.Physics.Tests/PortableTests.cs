using CsCheck;

namespace PileController.Physics.Tests;

/// <summary>
/// The yardstick is the framework's own function, good to about one unit in the last place on the machines tests run on;
/// the bounds are relative errors (2.2e-16 is one unit at most).
/// </summary>
public class PortableTests
{
    private static readonly Gen<double> Exponents = Gen.Double[-700, 700];
    private static readonly Gen<double> Positives = Gen.Double[-690, 690].Select(Math.Exp);
    private static readonly Gen<double> NearOne = Gen.Double[0.5, 2];

    [Fact]
    public void Exp_AnyExponent_AgreesWithTheFramework() =>
        Exponents.Sample(x => Close(Math.Exp(x), Portable.Exp(x), 5e-16), iter: 20_000);

    [Fact]
    public void ExpMinusOne_NearZero_KeepsItsDigits() =>
        Gen.Double[-30, 0].Select(Math.Exp).Sample(
            x => Close(x + (x * x / 2) + (x * x * x / 6), Portable.ExpMinusOne(x), 5e-16 + (x * x * x)), iter: 5_000);

    [Fact]
    public void ExpMinusOne_AwayFromZero_IsExpLessOne() =>
        Gen.Double[0.3, 30].Sample(x => Close(Math.Exp(x) - 1, Portable.ExpMinusOne(x), 2e-15), iter: 5_000);

    [Fact]
    public void Log_AnyPositive_AgreesWithTheFramework() =>
        Positives.Sample(x => Close(Math.Log(x), Portable.Log(x), 5e-16), iter: 20_000);

    [Fact]
    public void Log_NearOne_KeepsItsDigits() =>
        NearOne.Sample(x => Close(Math.Log(x), Portable.Log(x), 5e-16), iter: 20_000);

    [Fact]
    public void Log10_AnyPositive_AgreesWithTheFramework() =>
        Positives.Sample(x => Close(Math.Log10(x), Portable.Log10(x), 7e-16), iter: 5_000);

    [Fact]
    public void Pow_ResultOfOrdinarySize_IsWithinOneInTenToTheFifteenth() =>
        Gen.Select(Gen.Double[0.01, 100], Gen.Double[-20, 20]).Sample(
            (x, y) => Close(Math.Pow(x, y), Portable.Pow(x, y), 1e-15), iter: 20_000);

    [Fact]
    public void Pow_ResultOfAnySize_IsWithinFourInTenToTheFifteenth() =>
        Gen.Select(Positives, Gen.Double[-1, 1]).Sample(
            (x, y) => Close(Math.Pow(x, y), Portable.Pow(x, y), 4e-15), iter: 20_000);

    [Theory]
    [InlineData(-2, 3)]
    [InlineData(-2, 2)]
    [InlineData(-2, 0.5)]
    [InlineData(0, 2)]
    [InlineData(0, -2)]
    [InlineData(0, 0)]
    [InlineData(-0.0, -3)]
    [InlineData(1, double.NaN)]
    [InlineData(double.NaN, 0)]
    [InlineData(double.NaN, 1)]
    [InlineData(2, double.PositiveInfinity)]
    [InlineData(0.5, double.PositiveInfinity)]
    [InlineData(2, double.NegativeInfinity)]
    [InlineData(-1, double.PositiveInfinity)]
    [InlineData(double.PositiveInfinity, -1)]
    [InlineData(double.NegativeInfinity, 3)]
    [InlineData(double.NegativeInfinity, 2.5)]
    [InlineData(1e200, 2)]
    [InlineData(1e-200, 2)]
    [InlineData(3, 40)]
    public void Pow_AtAnEdge_FollowsTheFramework(double x, double y)
    {
        double expected = Math.Pow(x, y);
        double actual = Portable.Pow(x, y);
        Assert.True(expected.Equals(actual) || Math.Abs(actual - expected) <= 1e-15 * Math.Abs(expected), $"{actual:R} against {expected:R}");
        Assert.True(double.IsNaN(expected) || double.IsNegative(expected) == double.IsNegative(actual));
    }

    [Fact]
    public void SinAndCos_AnyAngle_AgreeWithTheFramework() =>
        Gen.Double[-1e6, 1e6].Sample(
            x => Close(Math.Sin(x), Portable.Sin(x), 6e-16) && Close(Math.Cos(x), Portable.Cos(x), 6e-16), iter: 20_000);

    [Fact]
    public void SinAndCos_AtMultiplesOfAQuarterTurn_KeepTheirDigits() =>
        Gen.Int[-1000, 1000].Sample(
            n => Close(Math.Sin(n * Math.PI / 2), Portable.Sin(n * Math.PI / 2), 6e-16)
                && Close(Math.Cos(n * Math.PI / 2), Portable.Cos(n * Math.PI / 2), 6e-16), iter: 2_000);

    [Fact]
    public void Tan_AnyAngle_AgreesWithTheFramework() =>
        Gen.Double[-100, 100].Sample(x => Close(Math.Tan(x), Portable.Tan(x), 1e-15), iter: 5_000);

    [Fact]
    public void Atan_AnyNumber_AgreesWithTheFramework() =>
        Gen.Double[-50, 50].Sample(x => Close(Math.Atan(x), Portable.Atan(x), 7e-16), iter: 10_000);

    [Fact]
    public void Atan2_AnyPoint_AgreesWithTheFramework() =>
        Gen.Select(Gen.Double[-10, 10], Gen.Double[-10, 10]).Sample(
            (y, x) => Close(Math.Atan2(y, x), Portable.Atan2(y, x), 9e-16), iter: 10_000);

    [Fact]
    public void AsinAndAcos_BetweenMinusOneAndOne_AgreeWithTheFramework() =>
        Gen.Double[-1, 1].Sample(
            x => Close(Math.Asin(x), Portable.Asin(x), 9e-16) && Close(Math.Acos(x), Portable.Acos(x), 9e-16), iter: 10_000);

    [Fact]
    public void Functions_OutsideTheirDomain_AnswerAsTheFramework()
    {
        Assert.Equal(double.PositiveInfinity, Portable.Exp(709.79));
        Assert.Equal(0, Portable.Exp(-746));
        Assert.Equal(double.Epsilon, Portable.Exp(-744.5));
        Assert.Equal(1, Portable.Exp(0));
        Assert.Equal(double.NaN, Portable.Exp(double.NaN));
        Assert.Equal(double.NegativeInfinity, Portable.Log(0));
        Assert.Equal(double.NaN, Portable.Log(-1));
        Assert.Equal(double.NaN, Portable.Log(double.NaN));
        Assert.Equal(double.PositiveInfinity, Portable.Log(double.PositiveInfinity));
        Assert.Equal(Math.Log(1e-310), Portable.Log(1e-310), 1e-12);
        Assert.Equal(double.NaN, Portable.Sin(double.PositiveInfinity));
        Assert.Equal(double.NaN, Portable.Acos(1.5));
        Assert.Equal(double.NaN, Portable.Asin(double.NaN));
    }

    [Fact]
    public void Sin_BeyondTheLargestAngle_NamesTheRange()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Portable.Sin(2e6));
        Assert.Contains("1000000", error.Message);
    }

    // A digest written down once: a processor or compiler that rounds otherwise fails here.
    [Fact]
    public void Functions_OnEveryProcessor_GiveTheSameBits()
    {
        ulong digest = 14695981039346656037;
        for (int i = 1; i <= 2000; i++)
        {
            double x = i * 0.0137;
            foreach (double value in new[]
            {
                Portable.Exp(x), Portable.Exp(-x), Portable.Log(x), Portable.Pow(x, 0.31), Portable.Sin(x), Portable.Cos(x), Portable.Atan(x),
            })
            {
                digest = unchecked((digest ^ (ulong)BitConverter.DoubleToInt64Bits(value)) * 1099511628211);
            }
        }

        Assert.Equal(1981582757601769895UL, digest);
    }

    private static bool Close(double expected, double actual, double relative) =>
        expected == actual || Math.Abs(actual - expected) <= relative * Math.Abs(expected);
}
