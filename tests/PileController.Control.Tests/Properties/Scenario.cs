using CsCheck;
using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Properties;

/// <summary>One tick of a scenario: what is said, what is asked, how much later.</summary>
internal sealed record Move(RigReadings Readings, Command[] Commands, double Seconds, long WallJumpMilliseconds);

/// <summary>A run of made-up ticks through a controller, the truth of each tick kept.</summary>
internal sealed record Scenario(ControlSettings Settings, bool Lit, Move[] Moves)
{
    // Mostly believable, so that runs get far; sometimes anything a port could ever say.
    private static readonly Gen<Reading> Wild = Gen.Select(
        Gen.Frequency((8, Gen.Int[-1000, 2000]), (1, Gen.Int)),
        Gen.Frequency((10, Gen.Const(ReadingQuality.Good)), (4, Gen.Byte[0, 21].Select(b => (ReadingQuality)b)), (1, Gen.Const((ReadingQuality)200))),
        Gen.Frequency((5, Gen.Const(0)), (1, Gen.Int[0, 60_000])),
        (quanta, quality, age) => new Reading(quanta, quality, age));

    private static readonly Gen<RigReadings> Calm = Gen.Select(
        Gen.Double[35, 70], Gen.Double[-15, 25], Gen.Double[-5, 35], Gen.Double[0, 5], Gen.Double[-2, 60], Gen.Double[10.8, 13],
        (heap, outside, house, flow, line, battery) => Sound.Readings
            .With(Channel.HeapCore, heap).With(Channel.HeapMiddle, heap - 1).With(Channel.HeapTurns, heap - 4)
            .With(Channel.HeapEdge, heap - 15).With(Channel.Outside, outside).With(Channel.House, house).With(Channel.Flow, flow)
            .With(Channel.Supply, line).With(Channel.Return, line - 2).With(Channel.Battery, battery).With(Channel.PumpPower, 10.0));

    private static readonly Gen<RigReadings> AnyReadings = Gen.Select(
        Calm, Gen.Int[0, 20], Gen.Select(Gen.Int[0, ChannelTable.Count - 1], Wild).Array[0, 6],
        (calm, upset, faults) => faults.Aggregate(Upset(calm, upset), (readings, fault) => readings.With((Channel)fault.Item1, fault.Item2)));

    private static readonly Gen<Command> AnyCommand = Gen.Frequency(
        (3, Gen.Select(
            Gen.Int[0, 3], Gen.Frequency((9, Gen.Double[-1, 2]), (1, Gen.Double)), Gen.Frequency((5, Gen.Long[0, 900_000]), (1, Gen.Long)),
            (actuator, value, length) => (Command)new TakeByHand((Actuator)actuator, value, length, "Ada"))),
        (1, Gen.Int[0, 4].Select(a => (Command)new ReleaseHand(a == 4 ? null : (Actuator)a))),
        (2, Gen.Int[0, 4].Select(i => (Command)new ClearTrip(new[] { "leak", "level", "noFlow", "pumpSilent", "nonsense" }[i]))),
        (1, Gen.Bool.Select(on => (Command)new SetServicing(on))),
        (1, Gen.Select(Gen.Bool, Gen.Long, Gen.Long, (store, jump, late) => (Command)new ReportTick(store, jump, late))));

    // Weather and heap stand for a while, as they do, and single readings go wrong on top of that.
    private static readonly Gen<Move[]> AnyMoves = Gen.Select(
        AnyReadings, Gen.Frequency((6, Gen.Const(Array.Empty<Command>())), (1, AnyCommand.Array[1, 3])), Gen.Int[1, 30],
        Gen.Frequency((9, Gen.Double[1, 60]), (1, Gen.Double[0, 4000])), Gen.Frequency((20, Gen.Const(0L)), (1, Gen.Long[-4_000_000, 4_000_000])),
        (readings, commands, times, seconds, jump) => Enumerable.Range(0, times)
            .Select(i => new Move(readings, i == 0 || commands is [ReportTick] ? commands : [], seconds, i == 0 ? jump : 0)))
        .Array[1, 12].Select(parts => parts.SelectMany(p => p).ToArray());

    private static readonly Gen<ControlSettings> AnySettings = Gen.Select(
        Gen.Frequency((4, Gen.Const(DrawPolicy.Means)), (1, Gen.Int[0, 5].Select(p => (DrawPolicy)p))),
        Gen.Bool, Gen.Bool, Gen.Double[0.5, 0.999], Gen.Frequency((4, Gen.Const(80.0)), (1, Gen.Const(0.0))),
        (policy, blower, backup, confidence, coil) => new ControlSettings
        {
            Policy = policy,
            BlowerFitted = blower,
            BackupFitted = backup,
            Confidence = confidence,
            CoilWPerK = coil,
        });

    public static Gen<Scenario> Any { get; } = Gen.Select(
        AnySettings, Gen.Bool, AnyMoves, (settings, lit, moves) => new Scenario(settings, lit, moves));

    public Memory Start => Memory.Fresh with { Estimator = EstimatorMemory.Fresh with { Lit = Lit } };

    private static RigReadings Upset(RigReadings readings, int which) => which switch
    {
        0 => readings.With(Channel.Leak, 1),
        1 => readings.With(Channel.Level, 0),
        2 => readings.With(Channel.PumpPower, 0),
        3 => readings.With(Channel.Flow, 0),
        4 => readings.With(Channel.Supply, 80),
        5 => readings.With(Channel.HeapCore, 88).With(Channel.HeapMiddle, 80),
        _ => readings,
    };

    /// <summary>Runs it and tells of every tick: the memory before, the move, the decision, the memory after.</summary>
    public void Run(Action<Memory, Move, Decision, Memory> tell)
    {
        Memory memory = Start;
        long now = 1_000_000;
        long wall = 1_737_936_000_000;
        foreach (Move move in Moves)
        {
            long passed = (long)(move.Seconds * 1000);
            now += passed;
            wall += passed + move.WallJumpMilliseconds;
            (Decision decision, Memory after) = Controller.Step(Settings, memory, move.Readings, move.Commands, new Instant(wall, now, 60));
            tell(memory, move, decision, after);
            memory = after;
        }
    }
}
