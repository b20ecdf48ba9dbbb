using CsCheck;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Plans.Ahead;

namespace PileController.Tests.Plans.Ahead;

public class SeasonDrawTests
{
    private static readonly Spreads None = new()
    {
        Fast = 0,
        Slow = 0,
        Moisture = 0,
        Mass = 0,
        Permeability = 0,
        Cover = 0,
        GroundKelvin = 0,
        AirChanges = 0,
        WinterKelvin = 0,
    };

    [Fact]
    public void Draw_WithoutAnySpread_LeavesHeapAndHouseAsTheyAre()
    {
        SeasonDraw draw = SeasonDraw.Of(None, 5, 17);
        Assert.Equal(new HeapBuild(), draw.Heap(new HeapBuild()));
        Assert.Equal(new HouseBuild(), draw.House(new HouseBuild()));
        Assert.Equal(0, draw.WinterKelvin);
    }

    [Fact]
    public void Draw_WithTheWidestSpreads_StaysWithinWhatSettingsAllow() =>
        Gen.Select(Gen.Long[0, 1_000_000], Gen.Int[0, 5000], Gen.Double[0, 0.5], Gen.Double[0, 0.8], Gen.Double[0.2, 0.8])
            .Sample((seed, season, fast, slow, moisture) =>
            {
                Spreads widest = new()
                {
                    Fast = 1,
                    Slow = 1,
                    Moisture = 0.2,
                    Mass = 0.5,
                    Permeability = 2,
                    Cover = 1,
                    GroundKelvin = 5,
                    AirChanges = 1,
                    WinterKelvin = 5,
                };
                HeapBuild heap = SeasonDraw.Of(widest, seed, season).Heap(
                    new HeapBuild { FastFraction = fast, SlowFraction = slow, MoistureFraction = moisture });

                Assert.InRange(heap.FastFraction, 0, 0.5);
                Assert.InRange(heap.SlowFraction, 0, 0.8);
                Assert.InRange(heap.FastFraction + heap.SlowFraction, 0, 0.95 + 1e-12);
                Assert.InRange(heap.MoistureFraction, 0.2, 0.8);
                Assert.InRange(heap.PermeabilityM2, 1e-11, 1e-6);
                Assert.InRange(heap.CoverThicknessM, 0, 1);
                Assert.True(heap.WetMassKg > 0);
            });

    [Fact]
    public void Draws_OverManySeasons_SpreadAsStated()
    {
        SeasonDraw[] draws = [.. Enumerable.Range(0, 4000).Select(season => SeasonDraw.Of(new Spreads(), 3, season))];
        double Spread(Func<SeasonDraw, double> of)
        {
            double mean = draws.Average(of);
            return Math.Sqrt(draws.Average(d => (of(d) - mean) * (of(d) - mean)));
        }

        // Of 4000 draws a standard deviation strays by 1/√8000 = 1.1 %: five times that.
        Assert.InRange(Spread(d => Math.Log(d.FastFactor)) / 0.3, 0.945, 1.055);
        Assert.InRange(Spread(d => Math.Log(d.PermeabilityFactor)) / 0.7, 0.945, 1.055);
        Assert.InRange(Spread(d => d.MoistureShift) / 0.04, 0.945, 1.055);
        Assert.InRange(Spread(d => d.WinterKelvin) / 1, 0.945, 1.055);
        Assert.Equal(4000, draws.Select(d => d.ProbeSeed).Distinct().Count());
    }
}
