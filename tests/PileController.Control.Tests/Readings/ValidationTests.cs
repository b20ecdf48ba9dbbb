using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Readings;

public sealed class ValidationTests
{
    [Theory]
    [InlineData(ReadingQuality.NotFitted)]
    [InlineData(ReadingQuality.NoAnswer)]
    [InlineData(ReadingQuality.BadChecksum)]
    [InlineData(ReadingQuality.Shorted)]
    [InlineData(ReadingQuality.PowerOnValue)]
    [InlineData((ReadingQuality)99)]
    public void Check_PortDoubtsIt_IsPassedOnAndNotGood(ReadingQuality quality)
    {
        RigReadings judged = Validation.Check(
            Sound.Readings.Doubted(Channel.HeapCore, quality), ProbeMemories.Fresh, 1000).Checked;

        Assert.Equal(quality, judged[Channel.HeapCore].Quality);
        Assert.False(judged.TryGet(Channel.HeapCore, out _));
    }

    [Theory]
    [InlineData(0, ReadingQuality.Good)]
    [InlineData(25_000, ReadingQuality.Good)]
    [InlineData(25_001, ReadingQuality.Stale)]
    [InlineData(int.MaxValue, ReadingQuality.Stale)]
    public void Check_LateReading_IsUsedWhileYoung(int age, ReadingQuality expected)
    {
        Assert.Equal(expected, new ProbeRun(Channel.HeapCore).Say(60, ReadingQuality.Late, age));
        Assert.Equal(expected, new ProbeRun(Channel.HeapCore).Say(60, ReadingQuality.Good, age));
    }

    public static TheoryData<Channel> Channels => [.. Enum.GetValues<Channel>()];

    [Theory]
    [MemberData(nameof(Channels))]
    public void Check_AQuantumPastTheRange_IsOutOfRange(Channel channel)
    {
        ChannelInfo info = ChannelTable.Of(channel);

        Assert.Equal(ReadingQuality.OutOfRange, new ProbeRun(channel).Say(info.Least - info.Quantum));
        Assert.Equal(ReadingQuality.OutOfRange, new ProbeRun(channel).Say(info.Most + info.Quantum));
        Assert.NotEqual(ReadingQuality.OutOfRange, new ProbeRun(channel).Say(info.Least));
        Assert.NotEqual(ReadingQuality.OutOfRange, new ProbeRun(channel).Say(info.Most));
    }

    [Fact]
    public void Check_Spike_IsTooFastAndTheNextSoundReadingIsGood()
    {
        ProbeRun run = new(Channel.HeapTurns);
        run.Say(55);

        Assert.Equal(ReadingQuality.TooFast, run.Say(75));
        Assert.Equal(ReadingQuality.Good, run.Say(55));
    }

    [Fact]
    public void Check_JumpThatStays_IsBelievedAfterSevenReadings()
    {
        ProbeRun run = new(Channel.HeapTurns);
        run.Say(55);
        ReadingQuality[] said = [.. Enumerable.Range(0, 7).Select(i => run.Say(35 + (i % 2 / 16.0)))];

        Assert.All(said[..6], quality => Assert.Equal(ReadingQuality.TooFast, quality));
        Assert.Equal(ReadingQuality.Good, said[6]);
    }

    [Fact]
    public void Check_JumpsThatNeverAgree_AreNotBelievedHoweverOften()
    {
        ProbeRun run = new(Channel.HeapTurns);
        run.Say(55);

        // From side to side, further each way than even the time since the last belief allows.
        Assert.All(
            Enumerable.Range(0, 8), i => Assert.Equal(ReadingQuality.TooFast, run.Say(i % 2 == 0 ? 5 : 90, tickMilliseconds: 1000)));
    }

    [Theory]
    [InlineData(1_000)]
    [InlineData(10_000)]
    [InlineData(60_000)]
    public void Check_FallAsFastAsWaterAllows_IsGoodAtAnyTickLength(int tickMilliseconds)
    {
        ProbeRun run = new(Channel.Return);
        run.Say(60, tickMilliseconds: tickMilliseconds);

        Assert.Equal(ReadingQuality.Good, run.Say(58, tickMilliseconds: tickMilliseconds));
    }

    [Fact]
    public void Check_NotAQuantumInThreeHours_IsStuckUntilItMoves()
    {
        ProbeRun run = new(Channel.HeapCore);
        run.Say(60, tickMilliseconds: 60_000);
        ReadingQuality[] said = [.. Enumerable.Range(0, 180).Select(_ => run.Say(60, tickMilliseconds: 60_000))];

        Assert.All(said[..179], quality => Assert.Equal(ReadingQuality.Good, quality));
        Assert.Equal(ReadingQuality.Stuck, said[179]);
        Assert.Equal(ReadingQuality.Good, run.Say(60 + (1.0 / 16)));
    }

    [Fact]
    public void Check_SwitchThatNeverMoves_IsNeverStuck()
    {
        ProbeRun run = new(Channel.Leak);
        for (int i = 0; i < 2000; i++)
        {
            Assert.Equal(ReadingQuality.Good, run.Say(0, tickMilliseconds: 60_000));
        }
    }

    [Theory]
    [InlineData(Channel.HeapCore, 2)]
    [InlineData(Channel.HeapTurns, 1)]
    [InlineData(Channel.HeapMiddle, 94)]
    public void Check_OneFarFromTwoThatAgree_DisagreesAndTheOthersAreGood(Channel liar, double value)
    {
        RigReadings raw = Sound.Readings.With(Channel.HeapCore, 50).With(Channel.HeapMiddle, 48).With(Channel.HeapTurns, 46);
        (RigReadings judged, ProbeMemories memory) = Validation.Check(raw.With(liar, value), ProbeMemories.Fresh, 1000);

        Channel[] heart = [Channel.HeapCore, Channel.HeapMiddle, Channel.HeapTurns];
        Assert.Equal([liar], heart.Where(c => judged[c].Quality == ReadingQuality.Disagrees));
        Assert.Equal(ReadingQuality.Disagrees, memory.Unfolded()[(int)liar].Quality);
        Assert.All(heart.Where(c => c != liar), c => Assert.True(judged[c].IsGood));
    }

    [Fact]
    public void Check_TwoHeapProbesFarApart_CannotSayWhichLies()
    {
        RigReadings raw = Sound.Readings.Doubted(Channel.HeapMiddle, ReadingQuality.NoAnswer).With(Channel.HeapTurns, 5);
        RigReadings judged = Validation.Check(raw, ProbeMemories.Fresh, 1000).Checked;

        Assert.True(judged[Channel.HeapCore].IsGood);
        Assert.True(judged[Channel.HeapTurns].IsGood);
    }

    [Fact]
    public void Check_ColdEdge_DoesNotDisagree() => Assert.Equal(ReadingQuality.Good, new ProbeRun(Channel.HeapEdge).Say(-5));

    [Fact]
    public void Check_NothingToDoubt_GivesTheReadingsBackThemselves()
    {
        RigReadings late = Sound.Readings.Doubted(Channel.House, ReadingQuality.Late);

        Assert.Same(Sound.Readings, Validation.Check(Sound.Readings, ProbeMemories.Fresh, 1000).Checked);
        Assert.NotSame(late, Validation.Check(late, ProbeMemories.Fresh, 1000).Checked);
    }
}
