using CsCheck;
using PileController.Plans.Ahead;

namespace PileController.Tests.Plans.Ahead;

public class DrawStreamTests
{
    [Fact]
    public void Numbers_OfASeedASeasonAndAPlace_AreAlwaysTheSame() =>
        Gen.Select(Gen.Long, Gen.Int[0, 5000], Gen.Int[0, 2000]).Sample((seed, season, place) =>
            Assert.Equal(new DrawStream(seed, season).Even(place), new DrawStream(seed, season).Even(place)));

    [Fact]
    public void Numbers_OfNeighbouringSeedsSeasonsAndPlaces_AllDiffer()
    {
        HashSet<double> seen = [];
        for (int seed = 0; seed < 20; seed++)
        {
            for (int season = 0; season < 20; season++)
            {
                for (int place = 0; place < 120; place++)
                {
                    Assert.True(seen.Add(new DrawStream(seed, season).Even(place)), $"{seed} {season} {place}");
                }
            }
        }
    }

    [Fact]
    public void Normal_OverManySeasons_HasMeanNoughtAndSpreadOne()
    {
        // Of 20 000 numbers the mean strays by 1/√20000 = 0.007 and the variance by √(2/20000) = 0.010: five times that.
        double[] drawn = [.. Enumerable.Range(0, 20_000).Select(season => new DrawStream(7, season).Normal(3))];
        Assert.InRange(drawn.Average(), -0.035, 0.035);
        Assert.InRange(drawn.Average(x => x * x), 0.95, 1.05);
        Assert.InRange(drawn.Count(x => x < -1.2816) / 20_000.0, 0.09, 0.11);
    }

    [Fact]
    public void Normal_OfTwoQuantities_IsNotCorrelated()
    {
        double product = Enumerable.Range(0, 20_000).Average(
            season => new DrawStream(7, season).Normal(0) * new DrawStream(7, season).Normal(1));
        Assert.InRange(product, -0.035, 0.035);
    }
}
