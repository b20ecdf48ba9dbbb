using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using Xunit.Abstractions;

namespace PileController.Tests.Alarms;

public sealed class FaultAlarmsTests(ITestOutputHelper output)
{
    [Fact]
    public void Survey()
    {
        foreach (Fault fault in AllFaults())
        {
            FaultBoard board = new();
            AlarmRun run = AlarmRun.OfDemo(board);
            for (int i = 0; i < 360; i++)
            {
                run.Tick();
            }

            long began = 0;
            board.Add(fault);
            int hours = fault.Kind is FaultKind.Drift ? 48 : 8;
            for (int i = 0; i < hours * 360; i++)
            {
                Decision d = run.Tick();
                began = began == 0 ? d.At.MonotonicMilliseconds : began;
            }

            output.WriteLine($"{fault.Kind} {fault.Channel}: " + string.Join(", ", run.Raised.Select(e => $"{e.Key}{(e.FirstUp ? "*" : "")} {(e.UtcMilliseconds - began) / 60000.0:0.0}min")));
        }
    }

    internal static IEnumerable<Fault> AllFaults()
    {
        foreach (FaultKind kind in Enum.GetValues<FaultKind>())
        {
            if (!FaultRules.IsOfOneProbe(kind))
            {
                yield return new Fault(kind, null, FaultRules.UsualSize(kind));
                continue;
            }

            foreach (ChannelInfo info in ChannelTable.All.Where(row => row.Channel != Channel.Sun && FaultRules.KindsOf(row.Channel).Contains(kind)))
            {
                yield return new Fault(kind, info.Channel, FaultRules.UsualSize(kind));
            }
        }
    }
}
