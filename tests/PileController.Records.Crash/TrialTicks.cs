using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Records.Crash;

/// <summary>
/// Ticks for trials of the record: readings that wander and fail, and a small control that fills every field of a
/// decision. Not the product's control, but pure and repeatable like it.
/// </summary>
public static class TrialTicks
{
    public const long StartUtc = 1_737_936_000_000;
    public const int TickMilliseconds = 10_000;

    private static readonly ReadingQuality[] Failures =
    [
        ReadingQuality.NoAnswer, ReadingQuality.BadChecksum, ReadingQuality.Shorted, ReadingQuality.PowerOnValue, ReadingQuality.Late,
    ];

    /// <summary>
    /// A memory as long as one that has learned for days, of which ticks change little: it takes more than a page of the tail
    /// whole, and what differs less.
    /// </summary>
    public static Memory Learned { get; } = Memory.Fresh with
    {
        Estimator = EstimatorMemory.Fresh with { Belief = new HeapBelief { Upper = Noise(HeapBelief.UpperSize) } },
    };

    /// <summary>An endless run of ticks that goes on from <paramref name="memory"/>.</summary>
    public static IEnumerable<TickEntry> From(Memory memory, int seed)
    {
        Random random = new(seed);

        // Later channels have chances of their own, so that a seed goes on telling the same story of all else.
        Random later = new(seed);
        double[] values = [.. ChannelTable.All.Select(c => Math.Clamp(20.0, c.Least, c.Most))];
        while (true)
        {
            RigReadings raw = Readings(values, random, later);
            IReadOnlyList<Command> commands = Commands(random);
            (Decision decision, Memory after) = Step(memory, raw, commands, At(memory.Sequence + 1));
            yield return new TickEntry(raw, commands, memory, decision, after);
            memory = after;
        }
    }

    /// <summary>The first <paramref name="count"/> ticks of a fresh record.</summary>
    public static List<TickEntry> First(int count, int seed = 1) => [.. From(Memory.Fresh, seed).Take(count)];

    /// <summary>The first <paramref name="count"/> ticks of a record that begins with <see cref="Learned"/>.</summary>
    public static List<TickEntry> FirstLearned(int count, int seed = 1) => [.. From(Learned, seed).Take(count)];

    /// <summary>When a tick is.</summary>
    public static Instant At(long sequence) =>
        new(StartUtc + (sequence * TickMilliseconds), 5_000 + (sequence * TickMilliseconds), 60);

    /// <summary>Decides one tick.</summary>
    public static (Decision Decision, Memory Memory) Step(
        Memory memory, RigReadings readings, IReadOnlyList<Command> commands, Instant at)
    {
        readings.TryGet(Channel.HeapCore, out double core);
        long sequence = memory.Sequence + 1;
        Mode mode = sequence % 97 == 0 ? (Mode)(sequence / 97 % 8) : memory.Mode;
        Totals totals = memory.Totals with { WaterJoules = memory.Totals.WaterJoules + (core * 1.1), Litres = sequence / 7.0 };
        DecisionKinds kinds = (mode != memory.Mode ? DecisionKinds.Mode : 0) | (commands.Count > 0 ? DecisionKinds.Hand : 0);
        Decision decision = new()
        {
            Sequence = sequence,
            At = at,
            Readings = Judged(readings),
            Estimate = new HeapEstimate(core, core - 1.25, core - 3, 0.4, 1500 + core, 2e8 + sequence, -0.1, true, sequence % 5 != 0),
            Mode = mode,
            ModeBefore = memory.Mode,
            ModeSinceMonotonicMilliseconds = at.MonotonicMilliseconds - 10,
            Kinds = kinds,
            WantWatts = 2000 + core,
            MeansWatts = 1800 - core,
            GrantWatts = Math.Min(2000 + core, 1800 - core),
            WaterGrantWatts = 900 + (core / 3),
            AirGrantWatts = 100,
            Curb = (Curb)(sequence / 60 % 13),
            HouseSetPointCelsius = 8,
            Draw = new MeteredDraw(880 + core, 60, 95.5, 3.2, false),
            Totals = totals,
            Verdicts = [Verdict.Clear, (Verdict)(sequence % 5)],
            FirstActing = -1,
            Hands = [.. commands.OfType<TakeByHand>().Select(c => new HandHold(c.Actuator, c.Value, at.MonotonicMilliseconds + c.Milliseconds, c.Who))],
            Outputs = new Outputs(0.5 + (core / 1000), 1, 0.25, sequence % 11 == 0),
            Note = commands.Count > 0 ? $"Taken, {commands.Count} of them." : null,
        };
        return (decision, memory with { Sequence = sequence, Mode = mode, Totals = totals });
    }

    private static double[] Noise(int count)
    {
        Random random = new(3);
        return [.. Enumerable.Range(0, count).Select(_ => random.NextDouble())];
    }

    private static RigReadings Readings(double[] values, Random first, Random later)
    {
        Reading[] readings = new Reading[ChannelTable.Count];
        foreach (ChannelInfo channel in ChannelTable.All)
        {
            int i = (int)channel.Channel;
            Random random = i < ChannelTable.FirstCount ? first : later;
            values[i] = Math.Clamp(values[i] + ((random.NextDouble() - 0.5) * channel.Quantum * 2), channel.Least, channel.Most);
            readings[i] = random.Next(200) switch
            {
                0 => new Reading(0, Failures[random.Next(Failures.Length)], 0),
                1 => Reading.FromValue(channel.Channel, values[i], ReadingQuality.Good, random.Next(5000)),
                _ => Reading.FromValue(channel.Channel, values[i]),
            };
        }

        readings[(int)Channel.Sun] = Reading.NotFitted;
        return new RigReadings(readings);
    }

    private static RigReadings Judged(RigReadings raw) =>
        raw.TryGet(Channel.Supply, out double supply) && supply > 20.5
            ? raw.With(Channel.Supply, raw[Channel.Supply] with { Quality = ReadingQuality.Disagrees })
            : raw;

    private static Command[] Commands(Random random) => random.Next(150) switch
    {
        0 => [new TakeByHand(Actuator.Blower, random.NextDouble(), 600_000, "grower, \"east\" door")],
        1 => [new ReleaseHand(null), new ReportTick(false, random.Next(-5000, 5000), 3)],
        2 => [new ClearTrip("noFlow"), new SetServicing(true)],
        _ => [],
    };
}
