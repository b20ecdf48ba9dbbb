using PileController.Control.Estimation;
using PileController.Control.Readings;

namespace PileController.Control.Tests.Estimation;

/// <summary>When the probes in the heap bear out what is believed of it.</summary>
public class CorroborationTests
{
    private const double NotRead = double.NaN;

    [Theory]
    [InlineData(0, 0, 0, 0, true)]
    // One lies, however far.
    [InlineData(12, 0, 0, 0, true)]
    // Two lie to one side, and two say otherwise: nobody knows who is right.
    [InlineData(1, 1, 0, 0, false)]
    [InlineData(-1, 0, 0, -1.5, false)]
    // Two lie off to opposite sides by as much: their mean is what was foretold.
    [InlineData(0.85, -0.95, 0, 0, true)]
    [InlineData(0.85, -0.95, 0, NotRead, true)]
    [InlineData(0.85, -0.95, NotRead, NotRead, false)]
    // By more to one side their mean is not.
    [InlineData(1.8, -0.85, 0, 0, false)]
    // Beside a pair nothing else may be odd.
    [InlineData(0.85, -0.95, 1.2, 0, false)]
    [InlineData(0, 0.85, -0.95, 12, false)]
    [InlineData(0.85, -0.95, 1.2, -1.2, false)]
    [InlineData(1, 1, 1, -1, false)]
    [InlineData(NotRead, NotRead, NotRead, 0, false)]
    public void Holds_ProbesThatLieOffByTheseKelvin_AsTold(double core, double middle, double turns, double edge, bool holds)
    {
        double[] errors = [core, middle, turns, edge];
        Reading[] readings = new Reading[ChannelTable.Count];
        double[] mean = new double[HeapBelief.Size];
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            Channel channel = ProbeSight.ChannelOf(i);
            readings[(int)channel] = double.IsNaN(errors[i]) ? new Reading(0, ReadingQuality.NoAnswer, 0) : Reading.FromValue(channel, 55);
            mean[HeapBelief.FirstProbe + i] = double.IsNaN(errors[i]) ? 0 : errors[i];
        }

        Assert.Equal(holds, Corroboration.Holds(new HeapBelief { Mean = mean }, new RigReadings(readings)));
    }

    [Fact]
    public void Holds_TwoThatSurprise_OnlyAsFarAsAHeapIsUneven()
    {
        Reading[] readings = new Reading[ChannelTable.Count];
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            readings[(int)ProbeSight.ChannelOf(i)] = Reading.FromValue(ProbeSight.ChannelOf(i), 55);
        }

        double[] mean = new double[HeapBelief.Size];
        mean[HeapBelief.FirstProbe] = 0.2;
        mean[HeapBelief.FirstProbe + 1] = -0.2;
        Assert.False(Corroboration.Holds(new HeapBelief { Mean = mean, Surprise = [3, 3, 0, 0] }, new RigReadings(readings)));
        Assert.True(Corroboration.Holds(new HeapBelief { Mean = mean, Surprise = [3, 0, 0, 0] }, new RigReadings(readings)));

        // A probe far off is hardly learned from: it is its surprise that tells.
        mean[HeapBelief.FirstProbe] = 0.9;
        mean[HeapBelief.FirstProbe + 1] = -0.9;
        Assert.True(Corroboration.Holds(new HeapBelief { Mean = mean, Surprise = [3, 2, 0, 0] }, new RigReadings(readings)));
        Assert.False(Corroboration.Holds(new HeapBelief { Mean = mean, Surprise = [3, 50, 0, 0] }, new RigReadings(readings)));
    }
}
