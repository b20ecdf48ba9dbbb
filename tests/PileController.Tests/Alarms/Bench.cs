using PileController.Alarms;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Records;

namespace PileController.Tests.Alarms;

/// <summary>A board stepped by hand-made ticks of ten seconds.</summary>
internal sealed class Bench
{
    public const double TickSeconds = 10;
    public const long Begins = 1_767_225_600_000; // 2026-01-01T00:00Z

    public Bench(AlarmTable table) => (Table, State) = (table, AlarmState.Fresh(table));

    public Bench(params AlarmRow[] rows)
        : this(new AlarmTable(rows))
    {
    }

    public AlarmTable Table { get; }

    public AlarmState State { get; set; }

    public List<AlarmEvent> Events { get; } = [];

    public long Tick { get; private set; }

    /// <summary>Moves the wall clock alone.</summary>
    public long WallOffsetMilliseconds { get; set; }

    public AlarmMemory this[string key] => State.Rows[Table.IndexOf(key)];

    /// <summary>A sound tick at Alder Bank: noon, nothing runs, all probes good.</summary>
    public static AlarmFacts Sound(long tick = 0, long wallOffsetMilliseconds = 0)
    {
        long monotonic = tick * 10_000;
        Instant at = new(Begins + (12 * 3_600_000) + monotonic + wallOffsetMilliseconds, monotonic, 0);
        Reading[] readings = new Reading[ChannelTable.Count];
        foreach ((Channel channel, double value) in SoundValues)
        {
            readings[(int)channel] = Reading.FromValue(channel, value);
        }

        RigReadings all = new(readings);
        return new AlarmFacts
        {
            At = at,
            Decision = DecisionOf(at, all),
            Raw = all,
            Record = new RecordHealth(true, tick, 0, 0, null) { FreeBytes = 8_000_000_000 },
        };
    }

    public void Step(AlarmFacts facts)
    {
        Tick++;
        (State, IReadOnlyList<AlarmEvent> events) = AlarmBoard.Step(Table, State, facts);
        Events.AddRange(events);
    }

    /// <summary>Steps so many ticks, each made by <paramref name="make"/> from a sound one.</summary>
    public void Live(int ticks, Func<AlarmFacts, AlarmFacts>? make = null)
    {
        for (int i = 0; i < ticks; i++)
        {
            AlarmFacts sound = Sound(Tick, WallOffsetMilliseconds);
            Step(make is null ? sound : make(sound));
        }
    }

    /// <summary>A row whose sign is what <paramref name="holds"/> says of the tick.</summary>
    public static AlarmRow Row(string key, Func<AlarmFacts, bool?> holds, AlarmPriority priority = AlarmPriority.Low, AlarmGroup group = AlarmGroup.Water) =>
        new(key, $"Alarm {key}", priority, group, (facts, _) => holds(facts)) { Cause = "c.", Consequence = "q.", Action = "a." };

    public static AlarmFacts With(AlarmFacts facts, Channel channel, double value) => With(facts, channel, Reading.FromValue(channel, value));

    public static AlarmFacts With(AlarmFacts facts, Channel channel, Reading reading) => facts with
    {
        Raw = facts.Raw.With(channel, reading),
        Decision = facts.Decision! with { Readings = facts.Decision.Readings.With(channel, reading) },
    };

    public static AlarmFacts Judged(AlarmFacts facts, string interlock, Verdict verdict)
    {
        Verdict[] verdicts = [.. facts.Decision!.Verdicts];
        verdicts[InterlockTable.IndexOf(interlock)] = verdict;
        return facts with { Decision = facts.Decision with { Verdicts = verdicts } };
    }

    private static readonly (Channel, double)[] SoundValues =
    [
        (Channel.HeapCore, 58), (Channel.HeapMiddle, 57), (Channel.HeapTurns, 50), (Channel.HeapEdge, 35), (Channel.Supply, 20),
        (Channel.Return, 18), (Channel.House, 12), (Channel.Floor, 12), (Channel.Tank, 25), (Channel.Outside, 2), (Channel.DuctAir, 15),
        (Channel.Flow, 0), (Channel.PumpPower, 0), (Channel.BlowerPower, 0), (Channel.Battery, 12.6), (Channel.Leak, 0), (Channel.Level, 1),
        (Channel.Humidity, 80), (Channel.CarbonDioxide, 600), (Channel.SpareOne, 50), (Channel.SpareTwo, 6), (Channel.SpareThree, 10),
        (Channel.SpareFour, 5),
    ];

    private static Decision DecisionOf(Instant at, RigReadings readings) => new()
    {
        Sequence = at.MonotonicMilliseconds / 10_000,
        At = at,
        Readings = readings,
        Estimate = new HeapEstimate(58, 56, 50, 0.5, 1500, 3e8, 0, true, true),
        Mode = Mode.Standby,
        ModeBefore = Mode.Standby,
        ModeSinceMonotonicMilliseconds = 0,
        Kinds = DecisionKinds.Steady,
        WantWatts = 0,
        MeansWatts = 0,
        GrantWatts = 0,
        WaterGrantWatts = 0,
        AirGrantWatts = 0,
        Curb = Curb.NoWant,
        HouseSetPointCelsius = 10,
        Draw = default,
        Totals = default,
        Verdicts = new Verdict[InterlockTable.All.Count],
        FirstActing = -1,
        Hands = [],
        Outputs = Outputs.Safe,
        Note = null,
    };
}
