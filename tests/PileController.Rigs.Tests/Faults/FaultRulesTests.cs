using PileController.Control.Readings;
using PileController.Rigs.Faults;

namespace PileController.Rigs.Tests.Faults;

public class FaultRulesTests
{
    public static TheoryData<Fault> Sound => new(
        new Fault(FaultKind.Open, Channel.HeapCore),
        new Fault(FaultKind.Open, Channel.Leak),
        new Fault(FaultKind.Short, Channel.Supply),
        new Fault(FaultKind.Stuck, Channel.Flow),
        new Fault(FaultKind.Drift, Channel.House, 2),
        new Fault(FaultKind.Drift, Channel.House, -2),
        new Fault(FaultKind.Spike, Channel.Battery, 60),
        new Fault(FaultKind.DeadPump),
        new Fault(FaultKind.BlockedLine, Size: 1),
        new Fault(FaultKind.ValveJammed),
        new Fault(FaultKind.TakenOut, Channel.HeapCore, 33),
        new Fault(FaultKind.TakenOut, Channel.Supply),
        new Fault(FaultKind.SlowBus));

    public static TheoryData<Fault, string, string> Senseless => new()
    {
        { new Fault(FaultKind.Open), "channel", "missing" },
        { new Fault(FaultKind.TakenOut, Channel.Flow, 33), "channel", "flow" },
        { new Fault(FaultKind.TakenOut, Channel.House, 900), "size", "900" },
        { new Fault(FaultKind.Drift, Size: 1), "channel", "missing" },
        { new Fault(FaultKind.DeadPump, Channel.Flow), "channel", "flow" },
        { new Fault(FaultKind.SlowBus, Channel.House), "channel", "house" },
        { new Fault(FaultKind.BlockedLine, Channel.Flow, 0.5), "channel", "flow" },
        { new Fault(FaultKind.Short, Channel.Flow), "channel", "temperature" },
        { new Fault(FaultKind.Spike, Channel.Level, 1), "channel", "switch" },
        { new Fault(FaultKind.Drift, Channel.Leak, 1), "channel", "switch" },
        { new Fault(FaultKind.Open, (Channel)99), "channel", "99" },
        { new Fault((FaultKind)99), "kind", "slowBus" },
        { new Fault(FaultKind.Open, Channel.House, 1), "size", "takes none" },
        { new Fault(FaultKind.Drift, Channel.House), "size", "-110 to 110 °C an hour" },
        { new Fault(FaultKind.Spike, Channel.House, 111), "size", "111" },
        { new Fault(FaultKind.Spike, Channel.House, double.NaN), "size", "NaN" },
        { new Fault(FaultKind.BlockedLine), "size", "at most 1" },
        { new Fault(FaultKind.BlockedLine, Size: 1.01), "size", "1.01" },
        { new Fault(FaultKind.BlockedLine, Size: double.NaN), "size", "NaN" },
        { new Fault(FaultKind.DeadPump, Size: 1), "size", "takes none" },
    };

    [Theory]
    [MemberData(nameof(Sound))]
    public void Find_SoundFault_FindsNothing(Fault fault) => Assert.Null(FaultRules.Find(fault));

    [Theory]
    [MemberData(nameof(Senseless))]
    public void Find_SenselessFault_NamesFieldGivenAndAllowed(Fault fault, string field, string word)
    {
        FaultComplaint? complaint = FaultRules.Find(fault);

        Assert.NotNull(complaint);
        Assert.Equal(field, complaint.Field);
        Assert.Contains(word, complaint.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Channel.HeapCore, "Open Short Stuck Drift Spike TakenOut")]
    [InlineData(Channel.Flow, "Open Stuck Drift Spike")]
    [InlineData(Channel.Level, "Open Stuck")]
    public void KindsOf_AProbe_AreThoseItCanHave(Channel channel, string kinds) =>
        Assert.Equal(kinds, string.Join(' ', FaultRules.KindsOf(channel)));

    [Fact]
    public void Sizes_OfAllProbes_HoldTheUsualOneAndStayWithinTheLargest()
    {
        foreach (ChannelInfo info in ChannelTable.All)
        {
            foreach (FaultKind kind in FaultRules.KindsOf(info.Channel))
            {
                (double least, double most) = FaultRules.SizesOf(kind, info.Channel);

                Assert.InRange(FaultRules.UsualSize(kind), least, most);
                Assert.InRange(most, 0, FaultRules.LargestSize);
                Assert.NotNull(FaultRules.Find(new Fault(kind, info.Channel, most + 0.5)));
            }
        }
    }
}
