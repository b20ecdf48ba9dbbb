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
        new Fault(FaultKind.SlowBus));

    public static TheoryData<Fault, string, string> Senseless => new()
    {
        { new Fault(FaultKind.Open), "Channel", "missing" },
        { new Fault(FaultKind.Drift, Size: 1), "Channel", "missing" },
        { new Fault(FaultKind.DeadPump, Channel.Flow), "Channel", "flow" },
        { new Fault(FaultKind.SlowBus, Channel.House), "Channel", "house" },
        { new Fault(FaultKind.BlockedLine, Channel.Flow, 0.5), "Channel", "flow" },
        { new Fault(FaultKind.Short, Channel.Flow), "Channel", "temperature" },
        { new Fault(FaultKind.Spike, Channel.Level, 1), "Channel", "switch" },
        { new Fault(FaultKind.Drift, Channel.Leak, 1), "Channel", "switch" },
        { new Fault(FaultKind.Open, (Channel)99), "Channel", "99" },
        { new Fault((FaultKind)99), "Kind", "SlowBus" },
        { new Fault(FaultKind.Open, Channel.House, 1), "Size", "takes none" },
        { new Fault(FaultKind.Drift, Channel.House), "Size", "-110 to 110 °C an hour" },
        { new Fault(FaultKind.Spike, Channel.House, 111), "Size", "111" },
        { new Fault(FaultKind.Spike, Channel.House, double.NaN), "Size", "NaN" },
        { new Fault(FaultKind.BlockedLine), "Size", "at most 1" },
        { new Fault(FaultKind.BlockedLine, Size: 1.01), "Size", "1.01" },
        { new Fault(FaultKind.BlockedLine, Size: double.NaN), "Size", "NaN" },
        { new Fault(FaultKind.DeadPump, Size: 1), "Size", "takes none" },
    };

    [Theory]
    [MemberData(nameof(Sound))]
    public void Complaint_SoundFault_IsNone(Fault fault) => Assert.Null(FaultRules.Complaint(fault));

    [Theory]
    [MemberData(nameof(Senseless))]
    public void Complaint_SenselessFault_NamesFieldAndWhatIsAllowed(Fault fault, string field, string word)
    {
        string? complaint = FaultRules.Complaint(fault);

        Assert.NotNull(complaint);
        Assert.StartsWith(field, complaint, StringComparison.Ordinal);
        Assert.Contains(word, complaint, StringComparison.Ordinal);
    }
}
