using PileController.Alarms;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Rigs.Faults;
using PileController.Service;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Tests.Alarms;

/// <summary>A simulated holding with the alarms following every tick.</summary>
internal sealed class AlarmRun
{
    private readonly Holding _holding;

    public AlarmRun(Holding holding, PileSettings settings, ControlSettings control)
    {
        _holding = holding;
        Table = TableOf(settings, control);
        State = AlarmState.Fresh(Table);
    }

    public AlarmTable Table { get; }

    public AlarmState State { get; private set; }

    /// <summary>Everything that happened.</summary>
    public List<AlarmEvent> Events { get; } = [];

    public IEnumerable<AlarmEvent> Raised => Events.Where(one => one.Kind == AlarmEventKind.Raised);

    public static AlarmTable TableOf(PileSettings settings, ControlSettings control) => AlarmTable.Of(
        new AlarmPlace(control, PileController.Control.Interlocks.InterlockTable.All, [.. settings.Rig.Probes.Select(probe => probe.Channel)]));

    /// <summary>The demo's holding at the end of its warm start.</summary>
    public static AlarmRun OfDemo(FaultBoard faults)
    {
        PileSettings settings = PileSettings.AlderBank;
        Holding holding = new(
            HoldingBuild.Plant(settings), settings.Control, settings.Rig, Demo.Weather(HoldingBuild.Place(settings)),
            HoldingBuild.StandardOffsetMinutes(settings), WarmStart.Shipped().State, faults);
        return new AlarmRun(holding, settings, settings.Control);
    }

    /// <summary>Lives one tick.</summary>
    public Decision Tick(IReadOnlyList<Command>? commands = null)
    {
        RigReadings raw = _holding.Read();
        Decision decision = _holding.Tick(raw, commands ?? []);
        (State, IReadOnlyList<AlarmEvent> events) = AlarmBoard.Step(Table, State, Facts(raw, decision));
        Events.AddRange(events);
        return decision;
    }

    public AlarmMemory Of(string key) => State.Rows[Table.IndexOf(key)];

    public static AlarmFacts Facts(RigReadings raw, Decision decision) => new()
    {
        At = decision.At,
        Decision = decision,
        Raw = raw,
        Record = new RecordHealth(true, decision.Sequence, 0, 0, null),
        Tally = default(TickTally),
    };
}
