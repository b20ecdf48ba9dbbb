using PileController.Control.Decisions;

namespace PileController.Control.Interlocks;

/// <summary>Judges every row of the table and says what they do together.</summary>
internal static class InterlockRule
{
    /// <summary>What the interlocks that act do together.</summary>
    /// <param name="Tripped">All is stopped.</param>
    /// <param name="HoldWater">No water draw.</param>
    /// <param name="HoldAir">No air draw.</param>
    /// <param name="HoldBackup">No backup heat: the house is too warm.</param>
    /// <param name="GuardFrost">Water is moved.</param>
    /// <param name="First">The first row that acts, trips before others; -1 for none.</param>
    /// <param name="FirstHoldingWater">The first row that holds the water, -1 for none.</param>
    internal readonly record struct Effect(
        bool Tripped, bool HoldWater, bool HoldAir, bool HoldBackup, bool GuardFrost, int First, int FirstHoldingWater);

    /// <summary>Judges one tick. Where nothing changed, the arrays given come back.</summary>
    /// <param name="settings">The limits.</param>
    /// <param name="signals">What is watched, in the order of <see cref="Signal"/>.</param>
    /// <param name="memory">What is remembered, one a row; rows it does not reach to have seen nothing.</param>
    /// <param name="told">What was said the tick before, one a row; empty when it is not known.</param>
    /// <param name="at">Now, the tick before, and the pump's start.</param>
    public static (Verdict[] Verdicts, InterlockMemory[] Memory, Effect Effect) Judge(
        ControlSettings settings, ReadOnlySpan<double> signals, InterlockMemory[] memory, Verdict[] told, in Moments at)
    {
        IReadOnlyList<Interlock> table = InterlockTable.All;
        Verdict[] verdicts = told.Length == table.Count ? told : new Verdict[table.Count];
        memory = memory.Length >= InterlockTable.FirstCount ? memory : Grown(memory, InterlockTable.FirstCount);
        InterlockMemory[] next = memory;
        bool tripped = false;
        bool water = false;
        bool air = false;
        bool backup = false;
        bool frost = false;
        int first = -1;
        int holding = -1;
        bool withheld = UnseenFrost.IsWithheld(memory);
        double zone = signals[(int)Signal.ActiveZone];
        for (int i = 0; i < table.Count; i++)
        {
            Interlock row = table[i];
            InterlockMemory before = InterlockMemory.Of(memory, i);
            (Verdict verdict, InterlockMemory kept) = One(settings, row, signals[(int)row.Source], zone, withheld, before, at);
            if (verdict != verdicts[i])
            {
                verdicts = ReferenceEquals(verdicts, told) ? [.. told] : verdicts;
                verdicts[i] = verdict;
            }

            if (kept != before)
            {
                next = ReferenceEquals(next, memory) || next.Length <= i ? Grown(next, Math.Max(next.Length, i + 1)) : next;
                next[i] = kept;
            }

            if (verdict is not (Verdict.Acting or Verdict.Latched))
            {
                continue;
            }

            bool trips = row.Action == InterlockAction.Trip;
            tripped |= trips;
            bool holds = !trips && Holds(row, Actuator.Pump);
            holding = holds && holding < 0 ? i : holding;
            water |= holds;
            backup |= !trips && Holds(row, Actuator.Backup);
            air |= !trips && Holds(row, Actuator.Blower);
            frost |= row.Action == InterlockAction.GuardFrost;
            bool outranks = trips && (first < 0 || table[first].Action != InterlockAction.Trip);
            // A pump that takes no power is why no water moves.
            bool explains = row.Source == Signal.PumpSilent && first >= 0 && table[first].Source == Signal.NoFlow;
            if (first < 0 || outranks || explains)
            {
                first = i;
            }
        }

        return (verdicts, next, new Effect(tripped, water, air, backup, frost, first, holding));
    }

    private static bool Holds(Interlock row, Actuator actuator) => InterlockReach.Of(row, actuator) == InterlockGrip.HoldsOff;

    // Rows are only ever added at the table's end.
    private static InterlockMemory[] Grown(InterlockMemory[] memory, int count) =>
        [.. memory, .. Enumerable.Repeat(InterlockMemory.Fresh, count - memory.Length)];

    private static (Verdict Verdict, InterlockMemory Memory) One(
        ControlSettings settings, Interlock row, double signal, double zone, bool withheld, in InterlockMemory memory, in Moments at)
    {
        bool blind = double.IsNaN(signal);
        if (blind && row.Action == InterlockAction.GuardFrost)
        {
            // Since when is kept: what is held back now is not begun anew the moment it is free again.
            long first = memory.SinceMilliseconds >= 0 ? memory.SinceMilliseconds : at.NowMilliseconds;
            if (!UnseenFrost.MayMove(settings, zone, withheld, at.NowMilliseconds - first))
            {
                return (Verdict.Blind, new InterlockMemory(first, false, false));
            }
        }

        if (blind && !row.StaleActs)
        {
            // Silence clears nothing: what acts goes on acting, what was passed stays passed until it is seen to be well.
            Verdict unseen = memory.Latched ? Verdict.Latched : memory.Acting ? Verdict.Acting : Verdict.Blind;
            return (unseen, memory);
        }

        double limit = row.Limit(settings);
        double band = memory.Acting ? row.ReleaseBand : 0;
        bool passed = blind || (row.Comparison == Comparison.Above ? signal > limit - band : signal < limit + band);
        if (!passed)
        {
            return (memory.Latched ? Verdict.Latched : Verdict.Clear, new InterlockMemory(-1, false, memory.Latched));
        }

        bool proves = PumpProof.Concerns(row);
        long since = memory.SinceMilliseconds >= 0 ? memory.SinceMilliseconds : proves ? at.BeforeMilliseconds : at.NowMilliseconds;
        bool lasted = proves
            ? memory.SinceMilliseconds >= 0 && PumpProof.HasLasted(settings.Limits, row, blind, since, at)
            : at.NowMilliseconds - since >= row.PersistenceMilliseconds;
        bool acting = memory.Acting || lasted;
        bool latched = memory.Latched || (acting && row.Action == InterlockAction.Trip);
        Verdict verdict = latched ? Verdict.Latched : acting ? Verdict.Acting : Verdict.Pending;
        return (verdict, new InterlockMemory(since, acting, latched));
    }
}
