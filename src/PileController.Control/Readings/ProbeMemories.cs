using System.Runtime.CompilerServices;

namespace PileController.Control.Readings;

/// <summary>
/// What validation remembers of all probes, folded: made every tick, it keeps only what the readings of that tick do not
/// tell. Not changed after it was made.
/// </summary>
internal sealed class ProbeMemories
{
    private readonly RigReadings _said;
    private readonly long _atMilliseconds;
    private readonly Times _rawSinceMilliseconds;
    private readonly Apart[] _apart;

    private ProbeMemories(RigReadings said, long atMilliseconds, ReadOnlySpan<ProbeMemory> each, Apart[] apartBefore)
    {
        _said = said;
        _atMilliseconds = atMilliseconds;
        int apart = 0;
        for (int i = 0; i < ChannelTable.Count; i++)
        {
            _rawSinceMilliseconds[i] = each[i].RawSinceMilliseconds;
            apart += IsAbsent(i, each[i].Quality) || IsPlain(each[i], atMilliseconds) ? 0 : 1;
        }

        _apart = apart == 0 ? [] : SetApart(each, atMilliseconds, apart, apartBefore);
    }

    /// <summary>Nothing seen yet.</summary>
    public static ProbeMemories Fresh { get; } = Of([]);

    /// <summary>Folds what was written.</summary>
    /// <param name="each">In channel order; a channel it does not tell of has seen nothing yet.</param>
    public static ProbeMemories Of(ReadOnlySpan<ProbeMemory> each)
    {
        Span<ProbeMemory> all = stackalloc ProbeMemory[ChannelTable.Count];
        all.Fill(ProbeMemory.Fresh);
        each[..Math.Min(each.Length, all.Length)].CopyTo(all);
        Reading[] said = new Reading[all.Length];
        long at = -1;
        for (int i = 0; i < said.Length; i++)
        {
            said[i] = new Reading(all[i].RawQuanta, all[i].Quality, 0);
            at = Math.Max(at, all[i].LastAtMilliseconds);
        }

        return new ProbeMemories(new RigReadings(said), at, all, []);
    }

    /// <summary>What is to be remembered after one more tick.</summary>
    /// <param name="said">The readings of the tick, judged.</param>
    /// <param name="each">What is to be remembered, in channel order.</param>
    /// <param name="atMilliseconds">When it was, monotonic.</param>
    public ProbeMemories Next(RigReadings said, ReadOnlySpan<ProbeMemory> each, long atMilliseconds) =>
        new(said, atMilliseconds, each, _apart);

    /// <summary>
    /// What is remembered, in channel order, up to the last channel that is fitted, but the first ones always.
    /// </summary>
    public ProbeMemory[] Unfolded()
    {
        Span<ProbeMemory> each = stackalloc ProbeMemory[ChannelTable.Count];
        Unfold(each);
        int count = each.Length;
        while (count > 0 && IsAbsent(count - 1, each[count - 1].Quality))
        {
            count--;
        }

        return each[..count].ToArray();
    }

    /// <summary>Tells what is remembered, in channel order.</summary>
    /// <param name="each">Filled: one a channel.</param>
    public void Unfold(Span<ProbeMemory> each)
    {
        ReadOnlySpan<Reading> said = _said.AsSpan();
        for (int i = 0; i < said.Length; i++)
        {
            Reading one = said[i];
            each[i] = IsAbsent(i, one.Quality)
                ? ProbeMemory.Fresh
                : one.IsGood
                ? new ProbeMemory(one.Quanta, _atMilliseconds, one.Quanta, _rawSinceMilliseconds[i], 0, one.Quality)
                : new ProbeMemory(0, -1, one.Quanta, _rawSinceMilliseconds[i], 0, one.Quality);
        }

        foreach (ref readonly Apart apart in _apart.AsSpan())
        {
            ref ProbeMemory one = ref each[(int)apart.Channel];
            one = one with
            {
                LastQuanta = apart.LastQuanta,
                LastAtMilliseconds = apart.LastAtMilliseconds,
                Agreeing = apart.Agreeing,
            };
        }
    }

    // A later channel without a probe leaves nothing to remember, so that it need not be written.
    private static bool IsAbsent(int channel, ReadingQuality quality) =>
        channel >= ChannelTable.FirstCount && quality == ReadingQuality.NotFitted;

    // Whether its reading tells the rest: it is believed now, or never was.
    private static bool IsPlain(in ProbeMemory probe, long atMilliseconds) => probe.Agreeing == 0
        && (probe.Quality == ReadingQuality.Good
            ? probe.LastQuanta == probe.RawQuanta && probe.LastAtMilliseconds == atMilliseconds
            : probe.LastQuanta == 0 && probe.LastAtMilliseconds == -1);

    private static Apart[] SetApart(ReadOnlySpan<ProbeMemory> each, long atMilliseconds, int count, Apart[] before)
    {
        Span<Apart> apart = stackalloc Apart[count];
        int next = 0;
        for (int i = 0; i < each.Length; i++)
        {
            ProbeMemory probe = each[i];
            if (!IsAbsent(i, probe.Quality) && !IsPlain(probe, atMilliseconds))
            {
                apart[next++] = new Apart((Channel)i, probe.LastQuanta, probe.LastAtMilliseconds, probe.Agreeing);
            }
        }

        return apart.SequenceEqual(before) ? before : apart.ToArray();
    }

    /// <summary>A probe that was believed and is not now, or not from this tick on.</summary>
    private readonly record struct Apart(Channel Channel, int LastQuanta, long LastAtMilliseconds, int Agreeing);

    [InlineArray(ChannelTable.Count)]
    private struct Times
    {
        private long _first;
    }
}
