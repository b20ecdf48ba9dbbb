using PileController.Control.Decisions;

namespace PileController.Control.Interlocks;

/// <summary>Judges every row of the table and says what they do together.</summary>
internal static class InterlockRule
{
    /// <summary>What the interlocks that act do together.</summary>
    internal readonly record struct Effect(bool Tripped, bool HoldWater, bool HoldAir, bool GuardFrost, int First)
    {
        public bool HoldsAll => HoldWater && HoldAir;
    }

    public static (Verdict[] Verdicts, InterlockMemory[] Memory, Effect Effect) Judge(
        ControlSettings settings, ReadOnlySpan<double> signals, InterlockMemory[] memory, long now)
    {
        IReadOnlyList<Interlock> table = InterlockTable.All;
        Verdict[] verdicts = new Verdict[table.Count];
        InterlockMemory[] next = new InterlockMemory[table.Count];
        bool tripped = false;
        bool water = false;
        bool air = false;
        bool frost = false;
        int first = -1;
        for (int i = 0; i < verdicts.Length; i++)
        {
            Interlock row = table[i];
            (verdicts[i], next[i]) = One(settings, row, signals[(int)row.Source], memory[i], now);
            if (verdicts[i] is not (Verdict.Acting or Verdict.Latched))
            {
                continue;
            }

            tripped |= row.Action == InterlockAction.Trip;
            water |= row.Action is InterlockAction.HoldWater or InterlockAction.HoldAll;
            air |= row.Action is InterlockAction.HoldAir or InterlockAction.HoldAll;
            frost |= row.Action == InterlockAction.GuardFrost;
            if (first < 0 || (row.Action == InterlockAction.Trip && table[first].Action != InterlockAction.Trip))
            {
                first = i;
            }
        }

        return (verdicts, next, new Effect(tripped, water, air, frost, first));
    }

    private static (Verdict Verdict, InterlockMemory Memory) One(
        ControlSettings settings, Interlock row, double signal, in InterlockMemory memory, long now)
    {
        bool blind = double.IsNaN(signal);
        double limit = row.Limit(settings);
        double band = memory.Acting ? row.ReleaseBand : 0;
        bool passed = blind
            ? row.StaleActs
            : row.Comparison == Comparison.Above ? signal > limit - band : signal < limit + band;
        if (!passed)
        {
            Verdict clear = blind ? Verdict.Blind : Verdict.Clear;
            return (memory.Latched ? Verdict.Latched : clear, new InterlockMemory(-1, false, memory.Latched));
        }

        long since = memory.SinceMilliseconds >= 0 ? memory.SinceMilliseconds : now;
        long persistence = row.Source == Signal.NoFlow
            ? (long)(settings.Limits.NoFlowSeconds * 1000)
            : row.PersistenceMilliseconds;
        bool acting = memory.Acting || now - since >= persistence;
        bool latched = memory.Latched || (acting && row.Action == InterlockAction.Trip);
        Verdict verdict = latched ? Verdict.Latched : acting ? Verdict.Acting : Verdict.Pending;
        return (verdict, new InterlockMemory(since, acting, latched));
    }
}
