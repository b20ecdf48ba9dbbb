using CsCheck;
using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

public class MicrobesTests
{
    private static readonly Gen<CardinalTemperatures> AnyCardinals = Gen.Select(
        Gen.Double[-5, 20], Gen.Double[25, 55], Gen.Double[1, 15], (least, best, more) => new CardinalTemperatures(least, best, best + more));

    [Fact]
    public void HaugAndCardinalCurves_AboveSixtyDegrees_Disagree()
    {
        // Haug 1993 has microbes at their best where the cardinal curve (from memory) has them dead.
        Assert.True(Microbes.HaugTemperature(71) > Microbes.HaugTemperature(60));
        Assert.True(Microbes.Thermophilic.At(71) < 0.15 * Microbes.Thermophilic.At(60));
        Assert.Equal(0, Microbes.Thermophilic.At(71.6));
        Assert.True(Microbes.HaugTemperature(71.6) > 17);
    }

    [Fact]
    public void HaugAndCardinalCurves_FromFortyToFiftyFiveDegrees_RiseAlike()
    {
        // As a cross-check: each step of 5 K multiplies both by factors within a third of each other.
        for (double t = 40; t <= 50; t += 5)
        {
            double haug = Microbes.HaugTemperature(t + 5) / Microbes.HaugTemperature(t);
            double cardinal = Microbes.Thermophilic.At(t + 5) / Microbes.Thermophilic.At(t);
            Assert.InRange(cardinal / haug, 2.0 / 3, 4.0 / 3);
        }
    }

    [Fact]
    public void CardinalCurve_OfAnyTemperatures_IsOneAtItsBestAndNeverMore() =>
        Gen.Select(AnyCardinals, Gen.Double[-40, 100]).Sample((curve, t) =>
        {
            Assert.Equal(1, curve.At(curve.BestC), 1e-9);
            Assert.Equal(0, curve.At(curve.LeastC));
            Assert.Equal(0, curve.At(curve.MostC));
            if (curve.BestC >= 0.5 * (curve.LeastC + curve.MostC))
            {
                Assert.InRange(curve.At(t), 0, 1 + 1e-9);
            }
        });

    [Fact]
    public void Factors_OfMoistureAirAndOxygen_RiseFromNoughtTowardsOne() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.001, 0.2]).Sample((at, more) =>
        {
            foreach (Func<double, double> factor in new Func<double, double>[]
                { Microbes.Moisture, Microbes.FreeAirSpace, share => Microbes.Oxygen(100 * share) })
            {
                Assert.InRange(factor(at), 0, 1);
                Assert.True(factor(at + more) > factor(at));
            }
        });
}
