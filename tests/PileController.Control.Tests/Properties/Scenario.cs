using System.Text.Json;
using CsCheck;
using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Foresight;
using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Properties;

/// <summary>One tick of a scenario: what is said, what is asked, how much later, and whether the controller was started anew before.</summary>
internal sealed record Move(RigReadings Readings, Command[] Commands, double Seconds, long WallJumpMilliseconds, bool Restart);

/// <summary>A run of made-up ticks through a controller, the truth of each tick kept.</summary>
internal sealed record Scenario(ControlSettings Settings, bool Lit, Move[] Moves)
{
    private const long Hour = 3_600_000;
    private const long WallStart = 482_760 * Hour;

    // Mostly believable, so that runs get far; sometimes anything a port could ever say.
    private static readonly Gen<Reading> Wild = Gen.Select(
        Gen.Frequency((8, Gen.Int[-1000, 2000]), (1, Gen.Int)),
        Gen.Frequency((10, Gen.Const(ReadingQuality.Good)), (4, Gen.Byte[0, 21].Select(b => (ReadingQuality)b)), (1, Gen.Const((ReadingQuality)200))),
        Gen.Frequency((5, Gen.Const(0)), (1, Gen.Int[0, 60_000])),
        (quanta, quality, age) => new Reading(quanta, quality, age));

    // The heap stays near where the scenario has it, so that the observer comes to believe it; now and then it does not.
    private static readonly Gen<Func<double, RigReadings>> Calm = Gen.Select(
        Gen.Select(Gen.Frequency((6, Gen.Double[-1, 0.3]), (1, Gen.Double[-25, 25])), Gen.Double[0, 6], Gen.Double[0, 15]),
        Gen.Double[-15, 25], Gen.Double[-5, 35], Gen.Frequency((9, Gen.Double[0.5, 5]), (1, Gen.Double[0, 0.5])),
        Gen.Frequency((4, Gen.Double[6, 60]), (1, Gen.Double[-2, 6])), Gen.Double[10.8, 13],
        (heap, outside, house, flow, line, battery) => (Func<double, RigReadings>)(coreC => Sound.Readings
            .With(Channel.HeapCore, coreC + heap.Item1).With(Channel.HeapMiddle, coreC + heap.Item1 - 1)
            .With(Channel.HeapTurns, coreC + heap.Item1 - heap.Item2).With(Channel.HeapEdge, coreC + heap.Item1 - heap.Item2 - heap.Item3)
            .With(Channel.Outside, outside).With(Channel.House, house).With(Channel.Flow, flow)
            .With(Channel.Supply, line).With(Channel.Return, line - 2).With(Channel.Battery, battery).With(Channel.PumpPower, 10.0)));

    private static readonly Gen<Func<double, RigReadings>> AnyReadings = Gen.Select(
        Calm, Gen.Int[0, 60], Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[1, 6])).SelectMany(
            faults => Gen.Select(Gen.Int[0, ChannelTable.Count - 1], Wild).Array[faults]),
        (calm, upset, faults) => (Func<double, RigReadings>)(coreC =>
            faults.Aggregate(Upset(calm(coreC), upset), (readings, fault) => readings.With((Channel)fault.Item1, fault.Item2))));

    private static readonly Gen<Forecast> AnyForecast = Gen.Select(
        Gen.Frequency((8, Gen.Int[-30, 30]), (1, Gen.Int[-300, 300])), Gen.Double[-20, 15], Gen.Double[-0.5, 0.5], Gen.Int[0, 80],
        Gen.Bool, Gen.Frequency((12, Gen.Const(0.0)), (1, Gen.Double)),
        (from, level, slope, hours, sun, wild) => new Forecast(
            WallStart + (from * Hour), [.. Enumerable.Range(0, hours).Select(h => level + (slope * h) + wild)],
            sun ? [.. Enumerable.Range(0, hours).Select(h => Math.Max(0, 600.0 * (1 - Math.Abs((h % 24) - 12) / 5.0)))] : null, "the valley"));

    private static readonly Gen<Command> AnyCommand = Gen.Frequency(
        (3, Gen.Select(
            Gen.Int[0, 3], Gen.Frequency((9, Gen.Double[-1, 2]), (1, Gen.Double)), Gen.Frequency((5, Gen.Long[0, 900_000]), (1, Gen.Long)),
            (actuator, value, length) => (Command)new TakeByHand((Actuator)actuator, value, length, "Ada"))),
        (1, Gen.Int[0, 4].Select(a => (Command)new ReleaseHand(a == 4 ? null : (Actuator)a))),
        (2, Gen.Int[0, 5].Select(i => (Command)new ClearTrip(new[] { "leak", "level", "noFlow", "pumpSilent", "restarts", "nonsense" }[i]))),
        (1, Gen.Bool.Select(on => (Command)new SetServicing(on))),
        (2, AnyForecast.Select(forecast => (Command)new TakeForecast(forecast))),
        (1, Gen.Select(
            Gen.Bool, Gen.Long, Gen.Long, Gen.Frequency((9, Gen.Int[0, 4]), (1, Gen.Int[5, 9])),
            (store, jump, late, restarts) => (Command)new ReportTick(store, jump, late, restarts))));

    // Weather and heap stand for a while, as they do, and single readings go wrong on top of that.
    private static readonly Gen<Func<double, Move[]>> AnyPart = Gen.Select(
        AnyReadings, Gen.Frequency((4, Gen.Const(Array.Empty<Command>())), (1, AnyCommand.Array[1, 3])), Gen.Int[1, 30],
        Gen.Frequency((9, Gen.Double[1, 60]), (1, Gen.Double[0, 4000])), Gen.Frequency((20, Gen.Const(0L)), (1, Gen.Long[-4_000_000, 4_000_000])),
        Gen.Frequency((12, Gen.Const(false)), (1, Gen.Const(true))),
        (readings, commands, times, seconds, jump, restart) => (Func<double, Move[]>)(coreC =>
        {
            RigReadings said = readings(coreC);
            return [.. Enumerable.Range(0, times).Select(i => new Move(
                said, i == 0 || commands is [ReportTick] ? commands : [], seconds, i == 0 ? jump : 0, restart && i == 0))];
        }));

    private static readonly Gen<Move[]> AnyMoves = Gen.Select(
        Gen.Double[40, 68], AnyPart.Array[1, 12], (coreC, parts) => parts.SelectMany(p => p(coreC)).ToArray());

    private static readonly Gen<ControlSettings> AnyPump = Gen.Select(
        Gen.Frequency((3, Gen.Const(PumpDrive.Duty)), (1, Gen.Const(PumpDrive.OnOff)), (1, Gen.Const(PumpDrive.Valve))),
        Gen.Double[0.1, 1], Usually(0, Gen.Double[0.2, 0.95]), Usually(0, Gen.Double[0, 2]), Usually(0.02, Gen.Double[0.001, 1]),
        Gen.Select(Usually(300, Gen.Double[0, 7200]), Usually(300, Gen.Double[0, 7200]), Usually(60, Gen.Double[0, 1800])),
        (drive, throttled, moving, shutAfter, slew, times) => new ControlSettings
        {
            Drive = drive,
            ThrottledDuty = throttled,
            MovingDuty = moving,
            ValveShutAfterHours = shutAfter,
            DutySlewPerSecond = slew,
            LeastRunSeconds = times.Item1,
            RelayLeastRunSeconds = times.Item1,
            LeastRestSeconds = times.Item2,
            PrimeSeconds = times.Item3,
        });

    private static readonly Gen<ControlSettings> AnySettings = Gen.Select(
        AnyPump, Gen.Frequency((4, Gen.Const(DrawPolicy.Means)), (1, Gen.Int[0, 5].Select(p => (DrawPolicy)p))),
        Gen.Select(Gen.Bool, Gen.Bool, Usually(80, Gen.Const(0.0))), Gen.Double[0.5, 0.999],
        Gen.Select(Usually(45, Gen.Double[35, 60]), Usually(48, Gen.Double[6, 96]), Gen.Double[0, 25]), Gen.Select(Usually(15, Gen.Double[5, 600]), Usually(60, Gen.Double[10, 600])),
        (pump, policy, fitted, confidence, heap, noFlow) => pump with
        {
            Policy = policy,
            BlowerFitted = fitted.Item1,
            BackupFitted = fitted.Item2,
            CoilWPerK = fitted.Item3,
            Confidence = confidence,
            HeapFloorC = heap.Item1,
            LookAheadHours = heap.Item2,
            MidwinterReserveKelvin = heap.Item3,
            Limits = new InterlockLimits { NoFlowSeconds = noFlow.Item1, NoFlowGraceSeconds = noFlow.Item2 },
        });

    public static Gen<Scenario> Any { get; } = Gen.Select(
        AnySettings, Gen.Frequency((1, Gen.Const(false)), (3, Gen.Const(true))), AnyMoves,
        (settings, lit, moves) => new Scenario(settings, lit, moves));

    public Memory Start => Memory.Fresh with { Estimator = EstimatorMemory.Fresh with { Lit = Lit } };

    /// <summary>The scenario of a number, always the same one.</summary>
    public static Scenario Of(int number) => Any.Generate(new PCG((uint)number, 1), null, out _);

    /// <summary>Runs it and tells of every tick.</summary>
    public void Run(Action<Tick> tell) => Run(tick =>
    {
        tell(tick);
        return true;
    });

    /// <summary>Runs it and tells of every tick as long as the answer is to go on.</summary>
    public void Run(Func<Tick, bool> tell)
    {
        Memory memory = Start;
        long now = 1_000_000;
        long wall = WallStart;
        for (int i = 0; i < Moves.Length; i++)
        {
            Move move = Moves[i];
            long passed = (long)(move.Seconds * 1000);
            memory = move.Restart ? memory.AfterRestart() : memory;
            now = move.Restart ? 5000 : now + passed;
            wall += passed + move.WallJumpMilliseconds;
            (Decision decision, Memory after) = Controller.Step(Settings, memory, move.Readings, move.Commands, new Instant(wall, now, 60));
            if (!tell(new Tick(Settings, i, Moves.Length, memory, move, decision, after)))
            {
                return;
            }

            memory = after;
        }
    }

    /// <summary>All of it as text: settings, and one line a tick with what is not as when all is well.</summary>
    public override string ToString() => string.Join('\n', Moves.Select((move, i) =>
        $"{i}: {move.Seconds:0.###} s, wall {move.WallJumpMilliseconds} ms{(move.Restart ? ", restart" : "")}, "
        + $"{JsonSerializer.Serialize(move.Commands)} {string.Join(' ', move.Readings.AsSpan().ToArray().Select(Said).Where(s => s.Length > 0))}")
        .Prepend($"{JsonSerializer.Serialize(Settings)}, lit: {Lit}"));

    private static string Said(Reading reading, int channel) => reading == Sound.Readings[(Channel)channel]
        ? ""
        : $"{(Channel)channel} {reading.ValueOf((Channel)channel)}{(reading.IsGood ? "" : $" {reading.Quality}")} {(reading.AgeMilliseconds > 0 ? $"{reading.AgeMilliseconds} ms" : "")}";

    private static Gen<double> Usually(double value, Gen<double> seldom) => Gen.Frequency((3, Gen.Const(value)), (1, seldom));

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
}
