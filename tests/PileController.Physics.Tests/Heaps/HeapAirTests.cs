using CsCheck;
using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

public class HeapAirTests
{
    // Half saturation of 2 volume per cent (Haug 1993) of the 20.95 in fresh air.
    private const double HalfSaturation = 2 / 20.95;

    private static readonly Gen<double> AnyStream = Gen.Double[-14, 2].Select(power => Math.Pow(10, power));

    [Fact]
    public void OxygenTaken_OfAnyStream_SolvesItsEquation() =>
        Gen.Select(AnyStream, AnyStream).Sample((demand, supply) =>
        {
            double taken = HeapAir.TakenKgPerS(demand, supply);
            double left = supply - taken;

            // Monod's factor at the concentration with which the air leaves, both sides times what would divide by nothing.
            double wanted = demand * left;
            double got = taken * (left + (HalfSaturation * supply));
            Assert.True(Math.Abs(wanted - got) <= 1e-9 * Math.Max(wanted, got) + (1e-14 * demand * supply), $"{demand:R} {supply:R}");
        });

    [Fact]
    public void OxygenTaken_OfAnyStream_IsNeverMoreThanCarriedOrWanted() =>
        Gen.Select(AnyStream, AnyStream).Sample((demand, supply) =>
        {
            double taken = HeapAir.TakenKgPerS(demand, supply);
            Assert.InRange(taken, 0, Math.Min(demand, supply));
            Assert.True(taken > 0);
        });

    [Fact]
    public void OxygenTaken_WithMoreAir_Grows() =>
        Gen.Select(AnyStream, AnyStream, Gen.Double[1.01, 10]).Sample((demand, supply, more) =>
            Assert.True(HeapAir.TakenKgPerS(demand, supply * more) > HeapAir.TakenKgPerS(demand, supply) * (1 - 1e-12)));

    [Fact]
    public void OxygenTaken_FromAGale_IsTheDemandAtFreshAir() =>
        Assert.Equal(1 / (1 + HalfSaturation), HeapAir.TakenKgPerS(1, 1e9), 1e-6);

    [Fact]
    public void OxygenTaken_FromABreath_IsAllOfIt() => Assert.Equal(1, HeapAir.TakenKgPerS(1e9, 1), 1e-6);

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    [InlineData(-1, 1)]
    [InlineData(1, -1)]
    public void OxygenTaken_WithoutDemandOrAir_IsNone(double demand, double supply) =>
        Assert.Equal(0, HeapAir.TakenKgPerS(demand, supply));

    [Fact]
    public void Draught_OfAChimney_FollowsDarcy()
    {
        // Hand sum: 1e-9 m² / 1.85e-5 Pa·s × 9.80665 m/s² × 0.2 kg/m³ × 2 m / 4 m = 5.301e-5 m/s.
        Assert.Equal(5.301e-5, HeapAir.DraughtMPerS(1e-9, 2, 4, 1.25, 1.05), 1e-8);
    }

    [Fact]
    public void Draught_OfAHeapColderThanTheAir_FallsAsFastAsItWouldRise() =>
        Assert.Equal(HeapAir.DraughtMPerS(1e-9, 2, 4, 1.25, 1.05), HeapAir.DraughtMPerS(1e-9, 2, 4, 1.05, 1.25));
}
