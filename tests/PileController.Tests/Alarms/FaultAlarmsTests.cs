using PileController.Alarms;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using Xunit.Abstractions;

namespace PileController.Tests.Alarms;

/// <summary>Every fault that can be put into the simulated rig raises its own alarm in time, and few others.</summary>
public sealed class FaultAlarmsTests(ITestOutputHelper output)
{
    private const int MostAlarms = 3;
    private const int TicksAnHour = 360;

    /// <summary>Faults that show themselves at a standing rig: kind, channel, its alarm.</summary>
    public static TheoryData<FaultKind, Channel, string> OfProbes()
    {
        TheoryData<FaultKind, Channel, string> data = [];
        foreach (FaultKind kind in (FaultKind[])[FaultKind.Open, FaultKind.Short, FaultKind.Stuck, FaultKind.Spike])
        {
            foreach (ChannelInfo row in ChannelTable.All.Where(row => row.Channel != Channel.Sun && FaultRules.KindsOf(row.Channel).Contains(kind)))
            {
                if (!Unseen.Contains((kind, row.Channel)) && !OnlyRunning.Contains((kind, row.Channel)))
                {
                    data.Add(kind, row.Channel, KeyOf(kind, row));
                }
            }
        }

        return data;
    }

    private static string KeyOf(FaultKind kind, ChannelInfo row) => (kind, row.Channel) switch
    {
        (_, Channel.House) => "houseBlind",
        (FaultKind.Spike, Channel.PumpPower) => "pumpRunsOff",
        (FaultKind.Spike, Channel.BlowerPower) => "blowerRunsOff",
        _ => $"probe.{row.Name}",
    };

    // What nobody can tell from the truth: a steady voltage, a dry switch, a wild value within what the thing can do in a tick.
    private static readonly (FaultKind Kind, Channel Channel)[] Unseen =
    [
        (FaultKind.Stuck, Channel.Battery), (FaultKind.Stuck, Channel.Leak), (FaultKind.Stuck, Channel.Level),
        (FaultKind.Spike, Channel.Return), (FaultKind.Spike, Channel.DuctAir),

        // Wet air stands at 100 %, and a door or a handful of gas moves either by more than the wild value.
        (FaultKind.Stuck, Channel.Humidity), (FaultKind.Spike, Channel.Humidity), (FaultKind.Spike, Channel.CarbonDioxide),
        (FaultKind.Spike, Channel.SpareOne), (FaultKind.Spike, Channel.SpareTwo), (FaultKind.Spike, Channel.SpareThree),
        (FaultKind.Spike, Channel.SpareFour),
    ];

    // What shows only while pump or blower runs.
    private static readonly (FaultKind Kind, Channel Channel)[] OnlyRunning =
    [
        (FaultKind.Stuck, Channel.Flow), (FaultKind.Stuck, Channel.PumpPower), (FaultKind.Stuck, Channel.BlowerPower),
        (FaultKind.Spike, Channel.Supply),
    ];

    [Theory]
    [MemberData(nameof(OfProbes))]
    public void Fault_OfAProbe_RaisesItsOwnAlarmInTimeAndFewOthers(FaultKind kind, Channel channel, string key)
    {
        FaultTrial trial = new();
        trial.Live(5);
        trial.Inject(new Fault(kind, channel, FaultRules.UsualSize(kind)));
        AlarmRow row = trial.Table.Rows[trial.Table.IndexOf(key)];

        // A probe that is stuck is believed until a live one would have moved.
        double unseenSeconds = kind == FaultKind.Stuck ? ChannelTable.Of(channel).StuckAfterMilliseconds * 0.001 : 0;
        trial.Live((int)((unseenSeconds + row.DelaySeconds) / 10) + TicksAnHour);
        output.WriteLine($"{kind} {channel}: {trial}");

        Assert.InRange(trial.TicksAfter(trial.ShownAt!.Value, key), 0, ((unseenSeconds + row.DelaySeconds) / 10) + 2);
        Assert.InRange(trial.Raised.Count, 1, MostAlarms);
        Assert.True(trial.Raised[0].FirstUp);
    }

    [Theory]
    [InlineData(FaultKind.Stuck, Channel.Flow, 0.0, "noFlow")]
    [InlineData(FaultKind.Stuck, Channel.PumpPower, 0.0, "pumpSilent")]
    [InlineData(FaultKind.Stuck, Channel.BlowerPower, 0.0, "blowerSilent")]
    [InlineData(FaultKind.DeadPump, null, 0.0, "pumpSilent")]
    [InlineData(FaultKind.BlockedLine, null, 1.0, "noFlow")]
    [InlineData(FaultKind.BlockedLine, null, 0.6, "flowWeak")]
    public void Fault_ThatShowsWhileTheRigRuns_RaisesItsOwnAlarmInTimeAndFewOthers(FaultKind kind, Channel? channel, double size, string key)
    {
        FaultTrial trial = new();
        trial.Live(5);
        trial.Inject(new Fault(kind, channel, size));
        trial.Live(2);
        trial.Live(TicksAnHour / 2, [new TakeByHand(Actuator.Pump, 1, 1_500_000, "Robin"), new TakeByHand(Actuator.Blower, 1, 1_500_000, "Robin")]);
        output.WriteLine($"{kind} {channel} {size}: {trial}");
        AlarmRow row = trial.Table.Rows[trial.Table.IndexOf(key)];

        Assert.InRange(trial.TicksAfter(trial.ShownAt!.Value, key), 0, (row.DelaySeconds / 10) + 2);
        Assert.InRange(trial.Raised.Count, 1, MostAlarms);
        Assert.True(trial.Raised[0].FirstUp);
    }

    [Theory]
    [InlineData(FaultKind.DeadPump, null, 0.0, "pumpSilent")]
    [InlineData(FaultKind.BlockedLine, null, 1.0, "noFlow")]
    public void Fault_AmidARun_IsToldAtTheTickOfTheTrip(FaultKind kind, Channel? channel, double size, string key)
    {
        FaultTrial trial = new();
        trial.Live(60, [new TakeByHand(Actuator.Pump, 1, 1_500_000, "Robin")]);
        trial.Inject(new Fault(kind, channel, size));
        trial.Live(30);
        output.WriteLine($"{kind} {channel} {size}: {trial}, tripped at {trial.TrippedAt}");

        AlarmEvent raised = Assert.Single(trial.Raised);
        Assert.Equal(key, raised.Key);
        Assert.True(raised.FirstUp);
        Assert.Equal(0, trial.TicksAfter(trial.TrippedAt!.Value, key));
    }

    [Fact]
    public void Fault_OfTheValve_ShutWhereItIsWanted_RaisesNoFlow()
    {
        FaultTrial trial = new();
        trial.Live(10, [new TakeByHand(Actuator.Valve, 0, 600_000, "Robin")]);
        trial.Inject(new Fault(FaultKind.ValveJammed));
        trial.Live(TicksAnHour, [new TakeByHand(Actuator.Pump, 1, 1_500_000, "Robin"), new TakeByHand(Actuator.Valve, 1, 1_500_000, "Robin")]);

        // A rig that stands still may cost the night, and that is told as well.
        Assert.Equal("noFlow", trial.Raised[0].Key);
        Assert.InRange(trial.Raised.Count, 1, MostAlarms);
        Assert.InRange(trial.TicksAfter(trial.ShownAt!.Value, "noFlow"), 0, 6 + 2);
    }

    [Fact]
    public void Fault_OfTheValve_OpenWhereItStands_IsSeenByNobodyAndHarmsNobody()
    {
        FaultTrial trial = new();
        trial.Live(10, [new TakeByHand(Actuator.Valve, 1, 600_000, "Robin")]);
        trial.Inject(new Fault(FaultKind.ValveJammed));
        trial.Live(TicksAnHour, [new TakeByHand(Actuator.Pump, 1, 1_500_000, "Robin")]);
        Assert.Empty(trial.Raised);
    }

    [Theory]
    [InlineData(FaultKind.Stuck, Channel.Battery)]
    [InlineData(FaultKind.Stuck, Channel.Leak)]
    [InlineData(FaultKind.Stuck, Channel.Level)]
    [InlineData(FaultKind.Spike, Channel.Return)]
    [InlineData(FaultKind.Spike, Channel.DuctAir)]
    [InlineData(FaultKind.Stuck, Channel.Humidity)]
    [InlineData(FaultKind.Spike, Channel.CarbonDioxide)]
    [InlineData(FaultKind.Spike, Channel.SpareTwo)]
    public void Fault_ThatCannotBeToldFromTheTruth_RaisesNothing(FaultKind kind, Channel channel)
    {
        FaultTrial trial = new();
        trial.Live(5);
        trial.Inject(new Fault(kind, channel, FaultRules.UsualSize(kind)));
        trial.Live(4 * TicksAnHour, twin: true);
        Assert.Empty(trial.Raised);
    }

    [Theory]
    [InlineData(Channel.HeapCore)]
    [InlineData(Channel.HeapTurns)]
    [InlineData(Channel.House)]
    [InlineData(Channel.Supply)]
    public void Fault_ThatDriftsSlowly_IsToldWithinTwoWeeksOrNotAtAll(Channel channel)
    {
        FaultTrial trial = new();
        trial.Live(5, twin: true);
        trial.Inject(new Fault(FaultKind.Drift, channel, 0.1));
        trial.Live(14 * 24 * TicksAnHour, twin: true);
        output.WriteLine($"{channel}: " + string.Join(", ", trial.Raised.Select(one => $"{one.Key} after {(one.UtcMilliseconds - trial.ShownAt!.Value) / 3.6e6:0} h")));
        Assert.InRange(trial.Raised.Count, 0, MostAlarms);
    }

    [Fact]
    public void Fault_OfTheBus_RaisesOneAlarmForAllItsProbes()
    {
        FaultTrial trial = new();
        trial.Live(5);
        trial.Inject(new Fault(FaultKind.SlowBus));
        trial.Live(3 * TicksAnHour);

        Assert.Equal(["probeBus"], trial.Raised.Select(one => one.Key));
        Assert.InRange(trial.TicksAfter(trial.ShownAt!.Value, "probeBus"), 0, 12 + 2);
    }

    /// <summary>
    /// What drifts by so many units an hour, how many hours after the start of the demo: its first alarm, and the hours it takes
    /// to be told from the truth.
    /// </summary>
    /// <remarks>
    /// For the first 22 hours it is mild and no water runs: what the supply's probe tells starts from water that stands in the
    /// house. From the evening of the second day on water runs all night.
    /// </remarks>
    public static TheoryData<Channel, int, double, string, double> Drifts => new()
    {
        { Channel.HeapCore, 0, 2, "heapFire", 12 }, { Channel.HeapMiddle, 0, 2, "heapFire", 12 }, { Channel.HeapTurns, 0, 2, "heapFire", 12 },
        { Channel.HeapEdge, 0, 2, "heapFire", 16 }, { Channel.Supply, 0, 4, "probe.supply", 20 }, { Channel.Supply, 42, 2, "scald", 10 },
        { Channel.Return, 0, 2, "probe.return", 36 },
        { Channel.House, 0, 2, "houseHot", 16 }, { Channel.Floor, 0, 2, "probe.floor", 16 }, { Channel.Tank, 0, 2, "probe.tank", 36 },
        { Channel.Outside, 0, 2, "probe.outside", 12 }, { Channel.DuctAir, 0, 2, "probe.ductAir", 40 }, { Channel.Flow, 0, 2, "flowWhileOff", 1 },
        { Channel.PumpPower, 0, 2, "pumpRunsOff", 2 }, { Channel.BlowerPower, 0, 2, "blowerRunsOff", 2 }, { Channel.Battery, 0, 2, "probe.battery", 4 },
    };

    [Theory]
    [MemberData(nameof(Drifts))]
    public void Fault_ThatDrifts_IsToldOnceItCannotBeTrue(Channel channel, int afterHours, double unitsAnHour, string key, double hours)
    {
        FaultTrial trial = new();
        trial.Live(5 + (afterHours * TicksAnHour), twin: true);
        trial.Inject(new Fault(FaultKind.Drift, channel, unitsAnHour));

        // Nobody comes for another day: what nobody mends has its consequences.
        trial.Live((int)((hours + 24) * TicksAnHour), twin: true);
        output.WriteLine($"{channel}: " + string.Join(", ", trial.Raised.Select(one => $"{one.Key} after {(one.UtcMilliseconds - trial.ShownAt!.Value) / 3.6e6:0.0} h")));

        Assert.Equal(key, trial.Raised[0].Key);
        Assert.InRange(trial.TicksAfter(trial.ShownAt!.Value, key), 0, hours * TicksAnHour);
        Assert.InRange(trial.Raised.Select(one => one.Key).Distinct().Count(), 1, MostAlarms);

        // What is hot enough to scald is told in both nights.
        Assert.All(trial.Raised.CountBy(one => one.Key), one => Assert.InRange(one.Value, 1, one.Key == "scald" ? 2 : 1));
    }
}
