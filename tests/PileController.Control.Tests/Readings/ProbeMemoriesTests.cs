using PileController.Control.Readings;

namespace PileController.Control.Tests.Readings;

public sealed class ProbeMemoriesTests
{
    private static readonly ProbeMemory Believed = new(960, 70_000, 960, 40_000, 0, ReadingQuality.Good);

    // Each differs from a plain one by one figure, whichever way the controller may or may not come by it.
    public static TheoryData<string, ProbeMemory> Each => new()
    {
        { "fresh", ProbeMemory.Fresh },
        { "believed", Believed },
        { "believed earlier", Believed with { LastAtMilliseconds = 60_000 } },
        { "believed at another value", Believed with { LastQuanta = 959 } },
        { "agreeing", Believed with { Agreeing = 3 } },
        { "not any more", Believed with { Quality = ReadingQuality.NoAnswer } },
        { "contradicted", Believed with { Quality = ReadingQuality.Disagrees } },
        { "never believed", new(0, -1, 85, 10_000, 0, ReadingQuality.OutOfRange) },
        { "never believed, at a value", new(1, -1, 85, 10_000, 0, ReadingQuality.OutOfRange) },
        { "never believed, agreeing", new(0, -1, 85, 10_000, 2, ReadingQuality.TooFast) },
        { "fresh, since ever", ProbeMemory.Fresh with { RawSinceMilliseconds = long.MaxValue } },
    };

    [Theory]
    [MemberData(nameof(Each))]
    public void Of_AnyMemory_ComesBackAsItWas(string name, ProbeMemory one)
    {
        ProbeMemory[] each = [.. Enumerable.Repeat(Believed, ChannelTable.Count)];
        each[3] = one;
        each[ChannelTable.FirstCount - 1] = one;

        Assert.NotEmpty(name);
        Assert.Equal(each, ProbeMemories.Of(each).Unfolded());
        Assert.Equal(each, ProbeMemories.Of(ProbeMemories.Of(each).Unfolded()).Unfolded());
    }

    [Fact]
    public void Of_FewerChannels_TheOthersAreFresh() =>
        Assert.Equal([Believed, .. Enumerable.Repeat(ProbeMemory.Fresh, ChannelTable.FirstCount - 1)], ProbeMemories.Of([Believed]).Unfolded());

    [Fact]
    public void Unfolded_LaterChannels_AreToldUpToTheLastThatIsFitted()
    {
        ProbeMemory[] first = [.. Enumerable.Repeat(Believed, ChannelTable.FirstCount)];
        ProbeMemory gone = Believed with { Quality = ReadingQuality.NotFitted };

        Assert.Equal(first, ProbeMemories.Of([.. first, gone, gone]).Unfolded());
        Assert.Equal([.. first, ProbeMemory.Fresh, Believed], ProbeMemories.Of([.. first, gone, Believed]).Unfolded());
    }

    [Fact]
    public void Next_AProbeIsDoubtedAndBelievedAgain_TheOlderMemoryStaysAsItWas()
    {
        ProbeMemory[] before = [.. Enumerable.Repeat(Believed, ChannelTable.Count)];
        ProbeMemory[] doubted = [.. before];
        doubted[5] = Believed with { Quality = ReadingQuality.NoAnswer };
        ProbeMemories first = ProbeMemories.Of(before);
        ProbeMemories second = first.Next(Said(doubted), doubted, 70_000);
        ProbeMemories third = second.Next(Said(before), before, 70_000);

        Assert.Equal(before, first.Unfolded());
        Assert.Equal(doubted, second.Unfolded());
        Assert.Equal(before, third.Unfolded());
    }

    private static RigReadings Said(ProbeMemory[] each) => new([.. each.Select(p => new Reading(p.RawQuanta, p.Quality, 0))]);
}
