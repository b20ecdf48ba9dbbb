namespace PileController.Control.Readings;

/// <summary>
/// Looks at every reading in its company before anything is decided: range, rate, stuck, stale, neighbours. A probe
/// that lies is worse than one that is silent.
/// </summary>
internal static class Validation
{
    // A level that the probe keeps this many readings in a row is taken for true even if it came by a jump.
    private const int AgreeingNeeded = 6;

    // A late value is used for one tick's worth of slack and no longer.
    private const int LateMilliseconds = 25_000;

    // Two probes in one heap never differ by more than this (common practice, no source).
    private const double HeapSpreadKelvin = 45;

    /// <summary>Validates all readings of a tick.</summary>
    /// <param name="raw">What the rig said.</param>
    /// <param name="memory">What is remembered of each probe.</param>
    /// <param name="monotonicMilliseconds">Now.</param>
    /// <returns>The readings with their final quality (those given, where they have it already), and what to remember.</returns>
    public static (RigReadings Checked, ProbeMemories Memory) Check(
        RigReadings raw, ProbeMemories memory, long monotonicMilliseconds)
    {
        Span<Reading> result = stackalloc Reading[ChannelTable.Count];
        Span<ProbeMemory> next = stackalloc ProbeMemory[ChannelTable.Count];
        memory.Unfold(next);
        ReadOnlySpan<Reading> readings = raw.AsSpan();
        for (int i = 0; i < result.Length; i++)
        {
            (result[i], next[i]) = One(ChannelTable.Of((Channel)i), readings[i], next[i], monotonicMilliseconds);
        }

        Neighbours(result, next);
        bool same = true;
        for (int i = 0; i < result.Length; i++)
        {
            same &= result[i].Quality == readings[i].Quality;
        }

        RigReadings judged = same ? raw : new RigReadings(result.ToArray());
        return (judged, memory.Next(judged, next, monotonicMilliseconds));
    }

    private static (Reading Checked, ProbeMemory Memory) One(ChannelInfo info, Reading reading, in ProbeMemory memory, long now)
    {
        bool same = reading.Quanta == memory.RawQuanta;
        ProbeMemory next = memory with
        {
            RawQuanta = reading.Quanta,
            RawSinceMilliseconds = same ? memory.RawSinceMilliseconds : now,
        };
        ReadingQuality quality = reading.Quality;
        if (quality is ReadingQuality.Late or ReadingQuality.Good)
        {
            // Age counts whatever the port calls it.
            quality = reading.AgeMilliseconds <= LateMilliseconds ? ReadingQuality.Good : ReadingQuality.Stale;
        }

        if (quality == ReadingQuality.Good)
        {
            (quality, next) = Judge(info, reading, memory, next, now, same);
        }

        next = next with { Quality = quality };
        return (reading with { Quality = quality }, next);
    }

    private static (ReadingQuality Quality, ProbeMemory Memory) Judge(
        ChannelInfo info, Reading reading, in ProbeMemory memory, in ProbeMemory next, long now, bool same)
    {
        double value = reading.Quanta * info.Quantum;
        if (value < info.Least || value > info.Most)
        {
            return (ReadingQuality.OutOfRange, next with { Agreeing = 0 });
        }

        if (info.StuckAfterMilliseconds > 0 && same && now - memory.RawSinceMilliseconds >= info.StuckAfterMilliseconds)
        {
            return (ReadingQuality.Stuck, next);
        }

        if (memory.LastAtMilliseconds >= 0 && !double.IsPositiveInfinity(info.FastestPerSecond))
        {
            double slack = 3 * info.Quantum;
            double seconds = Math.Max(0.001, (now - memory.LastAtMilliseconds) * 0.001);
            double jump = Math.Abs(reading.Quanta - memory.LastQuanta) * info.Quantum;
            if (jump > slack + (info.FastestPerSecond * seconds))
            {
                double step = memory.RawQuanta == int.MinValue
                    ? 0
                    : Math.Abs(reading.Quanta - (double)memory.RawQuanta) * info.Quantum;
                int agreeing = step <= slack + (info.FastestPerSecond * 10) ? memory.Agreeing + 1 : 0;
                if (agreeing < AgreeingNeeded)
                {
                    return (ReadingQuality.TooFast, next with { Agreeing = agreeing });
                }
            }
        }

        return (ReadingQuality.Good, next with { LastQuanta = reading.Quanta, LastAtMilliseconds = now, Agreeing = 0 });
    }

    // Of three or more heap probes, one that stands far from the middle one contradicts its neighbours. The edge is
    // left out: it may well be that cold.
    private static void Neighbours(Span<Reading> readings, Span<ProbeMemory> memory)
    {
        const double quantum = 1.0 / 16;
        Reading core = readings[(int)Channel.HeapCore];
        Reading middle = readings[(int)Channel.HeapMiddle];
        Reading turns = readings[(int)Channel.HeapTurns];
        if (!core.IsGood || !middle.IsGood || !turns.IsGood)
        {
            return;
        }

        int least = Math.Min(core.Quanta, Math.Min(middle.Quanta, turns.Quanta));
        int most = Math.Max(core.Quanta, Math.Max(middle.Quanta, turns.Quanta));
        if ((most - least) * quantum <= HeapSpreadKelvin)
        {
            return;
        }

        int between = core.Quanta + middle.Quanta + turns.Quanta - least - most;
        bool low = between - least > most - between;
        for (int i = (int)Channel.HeapCore; i <= (int)Channel.HeapTurns; i++)
        {
            if (readings[i].Quanta == (low ? least : most))
            {
                readings[i] = readings[i] with { Quality = ReadingQuality.Disagrees };
                memory[i] = memory[i] with { Quality = ReadingQuality.Disagrees };
                return;
            }
        }
    }
}
