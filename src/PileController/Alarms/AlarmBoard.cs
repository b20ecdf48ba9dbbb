using PileController.Service;

namespace PileController.Alarms;

/// <summary>
/// Steps all alarms by one tick. A pure function: no clock, no input or output. Time is counted from ticks on the
/// monotonic clock, so that no jump of the wall clock raises or ends anything.
/// </summary>
public static class AlarmBoard
{
    private const double MostTickSeconds = 120;
    private const double DaySeconds = 86_400;

    /// <summary>Judges one tick.</summary>
    /// <param name="table">The rows; causes stand before what follows from them.</param>
    /// <param name="state">What the tick before handed on.</param>
    /// <param name="tick">The tick.</param>
    /// <returns>What to hand on, and what happened.</returns>
    public static (AlarmState State, IReadOnlyList<AlarmEvent> Events) Step(AlarmTable table, AlarmState state, AlarmFacts tick)
    {
        long monotonic = tick.At.MonotonicMilliseconds;
        double elapsed = state.LastMonotonicMilliseconds < 0
            ? 0
            : Math.Clamp((monotonic - state.LastMonotonicMilliseconds) * 0.001, 0, MostTickSeconds);
        double now = state.Seconds + elapsed;
        AlarmFacts facts = tick with { Since = Since(tick.Tally, state.Tally), Before = state.Outputs };
        IReadOnlyList<AlarmMemory> before = state.Rows;
        AlarmMemory[]? changed = null;
        AlarmLog log = new(state.Number, tick.At.UtcMilliseconds);
        for (int i = 0; i < table.Rows.Count; i++)
        {
            AlarmMemory memory = (changed ?? before)[i];
            AlarmMemory next = One(table, i, memory, changed ?? before, facts, elapsed, now, log);
            if (!ReferenceEquals(next, memory))
            {
                changed ??= [.. before];
                changed[i] = next;
            }
        }

        AlarmState after = state with
        {
            Seconds = now,
            LastMonotonicMilliseconds = monotonic,
            Tally = tick.Tally,
            Outputs = tick.Decision?.Outputs,
            Rows = changed ?? before,
        };
        return (after.With(log.Events), log.Events);
    }

    private static AlarmMemory One(
        AlarmTable table, int index, AlarmMemory memory, IReadOnlyList<AlarmMemory> all, AlarmFacts facts, double elapsed, double now, AlarmLog log)
    {
        AlarmRow row = table.Rows[index];
        if (memory.Shelved && now >= memory.ShelvedUntilSeconds)
        {
            memory = AlarmHands.OffTheShelf(memory, now);
            log.Add(AlarmEventKind.ShelfEnded, row.Key, memory, quiet: memory.Phase != AlarmPhase.Standing);
        }

        bool? sign = row.Sign(facts, memory.Phase == AlarmPhase.Standing);
        return memory.Phase switch
        {
            AlarmPhase.Standing => Stand(row, memory, sign, facts, now, log),
            AlarmPhase.Pending when sign == false && now - memory.LastSeconds > row.BridgeSeconds =>
                memory with { Phase = AlarmPhase.Off, HeldBackBy = null },
            // What cannot be told is no time towards the delay.
            AlarmPhase.Pending when sign is null => memory with
            {
                BeganSeconds = memory.BeganSeconds + elapsed,
                LastSeconds = memory.LastSeconds + elapsed,
            },
            AlarmPhase.Pending => Wait(table, index, sign == true ? memory with { LastSeconds = now } : memory, all, facts, now, log),
            _ when sign == true => Wait(
                table, index, memory with { Phase = AlarmPhase.Pending, BeganSeconds = now, LastSeconds = now }, all, facts, now, log),
            _ => memory,
        };
    }

    private static AlarmMemory Stand(AlarmRow row, AlarmMemory memory, bool? sign, AlarmFacts facts, double now, AlarmLog log)
    {
        // A trip's alarm has the key of its interlock. Control may have refused: then it is latched still.
        memory = sign == false && facts.ClearerOf(row.Key) is { } who && !row.RisesNow(facts) ? memory with { ClearedBy = who }
            : sign == true && memory.ClearedBy is not null ? memory with { ClearedBy = null }
            : memory;
        if (sign == false)
        {
            if (now - memory.LastSeconds < row.ClearSeconds)
            {
                return memory;
            }

            log.Add(AlarmEventKind.Returned, row.Key, memory, quiet: memory.Shelved, memory.ClearedBy);
            return memory with { Phase = AlarmPhase.Off };
        }

        memory = memory with { LastSeconds = now };
        if (row.RemindSeconds > 0 && sign == true && !memory.Shelved && now - memory.ToldSeconds >= row.RemindSeconds && row.Reminds(facts))
        {
            memory = memory with { Unseen = true, SeenBy = null, ToldSeconds = now, Detail = row.Detail(facts) };
            log.Add(AlarmEventKind.Reminded, row.Key, memory, quiet: false);
        }

        return memory;
    }

    // An alarm that asks to be seen again each day its matter lasts stands for some days longer; what comes in those has not been told.
    private static bool HoldsBack(AlarmRow cause, AlarmMemory memory, double now) => memory.Phase == AlarmPhase.Standing
        && (cause.RemindSeconds <= 0 || memory.Shelved || now - memory.ToldSeconds <= DaySeconds);

    private static AlarmMemory Wait(
        AlarmTable table, int index, AlarmMemory memory, IReadOnlyList<AlarmMemory> all, AlarmFacts facts, double now, AlarmLog log)
    {
        AlarmRow row = table.Rows[index];
        string? cause = null;
        foreach (int from in table.CausesOf(index))
        {
            cause ??= HoldsBack(table.Rows[from], all[from], now) ? table.Rows[from].Key : null;
        }

        memory = memory.HeldBackBy == cause ? memory : memory with { HeldBackBy = cause };
        if (cause is not null || (now - memory.BeganSeconds < row.DelaySeconds && !row.RisesNow(facts)))
        {
            return memory;
        }

        AlarmMemory raised = memory with
        {
            Phase = AlarmPhase.Standing,
            Unseen = true,
            SeenBy = null,
            ClearedBy = null,
            ToldSeconds = now,
            RaisedUtcMilliseconds = log.UtcMilliseconds,
            FirstUp = !table.OthersOfGroup(index).Any(other => all[other].Phase == AlarmPhase.Standing),
            Detail = row.Detail(facts),
        };
        log.Add(AlarmEventKind.Raised, row.Key, raised, quiet: memory.Shelved);
        return raised;
    }

    // A count that is less than before was begun anew with the program.
    private static TickTally Since(in TickTally now, in TickTally before) => new(
        More(now.Missed, before.Missed), More(now.StepFaults, before.StepFaults), More(now.RigFaults, before.RigFaults),
        More(now.Dropped, before.Dropped));

    private static long More(long now, long before) => now >= before ? now - before : now;
}
