using CsCheck;
using PileController.Plans.Ahead;

namespace PileController.Tests.Plans.Ahead;

public class PercentilesTests
{
    [Fact]
    public void Percentiles_OfElevenEvenValues_AreTheSecondSixthAndTenth() =>
        Assert.Equal(new Percentiles(1, 5, 9), Percentiles.Of([10, 0, 1, 9, 2, 8, 3, 7, 4, 6, 5.0]));

    [Fact]
    public void Percentiles_BetweenTwoValues_LieStraightBetween() =>
        Assert.Equal(new Percentiles(1.25, 2.25, 3.25), Percentiles.Of([1, 3.5]));

    [Fact]
    public void Percentiles_OfThingsThatNeverHappened_AreNever()
    {
        Assert.Equal(new Percentiles(null, null, null), Percentiles.Of([null, null]));

        // Place 5 of 11 holds the sixth value; the last two of the eleven never happened.
        Assert.Equal(
            new Percentiles(1, 5, null), Percentiles.Of([0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, null, null]));
    }

    [Fact]
    public void Percentiles_OfAnyValues_AreOrderedAndAmongThem() =>
        Gen.Double[-1e6, 1e6].Array[1, 60].Sample(values =>
        {
            Percentiles p = Percentiles.Of(values);
            Assert.True(values.Min() <= p.P10 && p.P10 <= p.P50 && p.P50 <= p.P90 && p.P90 <= values.Max());
        });

    [Fact]
    public void Percentiles_OfNothing_AreRefused() => Assert.Throws<ArgumentException>(() => Percentiles.Of(Array.Empty<double>()));
}
