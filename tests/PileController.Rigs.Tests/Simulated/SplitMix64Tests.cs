using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class SplitMix64Tests
{
    // First five numbers of the public-domain reference program for the seed 1234567: from memory.
    [Theory]
    [InlineData(0, 6457827717110365317)]
    [InlineData(1, 3203168211198807973)]
    [InlineData(2, 9817491932198370423)]
    [InlineData(3, 4593380528125082431)]
    [InlineData(4, 16408922859458223821)]
    public void At_SeedOfTheReference_GivesItsNumbers(ulong n, ulong expected) =>
        Assert.Equal(expected, SplitMix64.At(1234567, n));

    [Fact]
    public void NearNormal_ManyDraws_HasMeanZeroAndSigmaOne()
    {
        const int draws = 400_000;
        double sum = 0;
        double squares = 0;
        int beyondTwo = 0;
        for (ulong n = 0; n < draws; n++)
        {
            double x = SplitMix64.NearNormal(SplitMix64.At(7, n));
            sum += x;
            squares += x * x;
            beyondTwo += Math.Abs(x) > 2 ? 1 : 0;
        }

        // Four standard errors: 4/sqrt(N) for the mean, 4/sqrt(2N) for the standard deviation.
        Assert.InRange(sum / draws, -0.0064, 0.0064);
        Assert.InRange(Math.Sqrt(squares / draws), 0.9955, 1.0045);

        // Beyond two sigma lie 2·(2-2/√3)⁴/24 = 4.25 % of a sum of four (Irwin-Hall; 4.55 % of a normal).
        Assert.InRange(beyondTwo / (double)draws, 0.0412, 0.0438);
    }

    [Fact]
    public void NearNormal_ExtremeBits_StaysWithinItsBound()
    {
        Assert.InRange(SplitMix64.NearNormal(ulong.MaxValue), 3.46, SplitMix64.MostSigmas);
        Assert.InRange(SplitMix64.NearNormal(0), -SplitMix64.MostSigmas, -3.46);
    }

    [Fact]
    public void Even_ExtremeBits_StaysWithinOne()
    {
        Assert.Equal(-1, SplitMix64.Even(0));
        Assert.InRange(SplitMix64.Even(ulong.MaxValue), 0.999999, 1);
    }
}
