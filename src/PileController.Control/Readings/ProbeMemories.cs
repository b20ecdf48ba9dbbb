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
        Span<Apart> apart = stackalloc Apart[ChannelTable.Count];
        int count = 0;
        for (int i = 0; i < ChannelTable.Count; i++)
        {
            ProbeMemory probe = each[i];
            _rawSinceMilliseconds[i] = probe.RawSinceMilliseconds;
            if (probe != Plain((Channel)i))
            {
                apart[count++] = new Apart((Channel)i, probe.LastQuanta, probe.LastAtMilliseconds, probe.Agreeing);
            }
        }

        ReadOnlySpan<Apart> found = apart[..count];
        _apart = found.SequenceEqual(apartBefore) ? apartBefore : found.ToArray();
    }

    /// <summary>Nothing seen yet.</summary>
    public static ProbeMemories Fresh { get; } = Of([]);

    /// <summary>What is remembered of one probe.</summary>
    public ProbeMemory this[Channel channel]
    {
        get
        {
            ProbeMemory plain = Plain(channel);
            foreach (ref readonly Apart apart in _apart.AsSpan())
            {
                if (apart.Channel == channel)
                {
                    return plain with
                    {
                        LastQuanta = apart.LastQuanta,
                        LastAtMilliseconds = apart.LastAtMilliseconds,
                        Agreeing = apart.Agreeing,
                    };
                }
            }

            return plain;
        }
    }

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

    /// <summary>What is remembered, in channel order.</summary>
    public ProbeMemory[] Unfolded()
    {
        ProbeMemory[] each = new ProbeMemory[ChannelTable.Count];
        for (int i = 0; i < each.Length; i++)
        {
            each[i] = this[(Channel)i];
        }

        return each;
    }

    // What is remembered of a probe that is believed now, or never was.
    private ProbeMemory Plain(Channel channel)
    {
        Reading said = _said[channel];
        long since = _rawSinceMilliseconds[(int)channel];
        return said.IsGood
            ? new ProbeMemory(said.Quanta, _atMilliseconds, said.Quanta, since, 0, said.Quality)
            : new ProbeMemory(0, -1, said.Quanta, since, 0, said.Quality);
    }

    /// <summary>A probe that was believed and is not now, or not from this tick on.</summary>
    private readonly record struct Apart(Channel Channel, int LastQuanta, long LastAtMilliseconds, int Agreeing);

    [InlineArray(ChannelTable.Count)]
    private struct Times
    {
        private long _first;
    }
}
