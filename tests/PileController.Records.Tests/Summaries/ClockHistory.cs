using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records.Crash;

namespace PileController.Records.Tests.Summaries;

/// <summary>
/// Ticks under a clock that does what clocks do: starts in 1970, jumps both ways, changes its offset, repeats a second,
/// and between some ticks the process restarts or was silent.
/// </summary>
internal static class ClockHistory
{
    private const long Hour = 3_600_000;
    private static readonly List<TickEntry> Plain = TrialTicks.First(500, seed: 12);

    /// <summary>Ticks of one history, in the sessions between restarts.</summary>
    public static List<List<TickEntry>> Of(Random random, int ticks)
    {
        List<List<TickEntry>> sessions = [[]];
        Memory memory = Memory.Fresh;
        long utc = random.Next(3) == 0 ? 0 : TrialTicks.StartUtc;
        long monotonic = 5_000;
        int offset = 60;
        foreach (TickEntry plain in Plain.Take(ticks))
        {
            utc += TrialTicks.TickMilliseconds;
            monotonic += TrialTicks.TickMilliseconds;
            switch (random.Next(60))
            {
                case 0:
                    utc = 0;
                    break;
                case 1:
                    utc = TrialTicks.StartUtc + random.NextInt64(3 * 365 * 24 * Hour);
                    break;
                case 2:
                    utc += random.NextInt64(-26 * Hour, 26 * Hour);
                    break;
                case 3:
                    offset = 60 - offset;
                    break;
                case 4:
                    utc -= 1000;
                    break;
                case 5:
                    sessions.Add([]);
                    monotonic = random.Next(60_000);
                    utc += random.Next(2) == 0 ? 0 : random.NextInt64(40 * 24 * Hour);
                    break;
                case 6:
                    utc -= TrialTicks.TickMilliseconds;
                    break;
            }

            Instant at = new(utc, monotonic, offset);
            (Decision decision, Memory after) = TrialTicks.Step(memory, plain.Raw, plain.Commands, at);
            sessions[^1].Add(new TickEntry(plain.Raw, plain.Commands, memory, decision, after));
            memory = after;
        }

        return [.. sessions.Where(session => session.Count > 0)];
    }
}
