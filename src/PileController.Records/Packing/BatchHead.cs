using PileController.Control.Decisions;

namespace PileController.Records.Packing;

/// <summary>What can be told of a batch without opening its columns.</summary>
/// <param name="FirstSequence">Number of its first tick; the others follow without a gap.</param>
/// <param name="Count">How many ticks, 1 or more.</param>
/// <param name="LeastUtc">Smallest wall time in it, ms. A clock may jump, so this need not be the first tick's.</param>
/// <param name="MostUtc">Largest wall time in it, ms.</param>
/// <param name="Kinds">All kinds of decision that occur in it.</param>
internal readonly record struct BatchHead(long FirstSequence, int Count, long LeastUtc, long MostUtc, DecisionKinds Kinds)
{
    /// <summary>Number of its last tick.</summary>
    public long LastSequence => FirstSequence + Count - 1;

    /// <summary>Whether a tick of it may lie in the stretch from <paramref name="from"/> to before <paramref name="to"/>.</summary>
    public bool Touches(long from, long to) => MostUtc >= from && LeastUtc < to;

    /// <summary>The head that fits these columns.</summary>
    public static BatchHead Of(long firstSequence, ReadOnlySpan<long> utc, ReadOnlySpan<long> kinds)
    {
        long least = long.MaxValue;
        long most = long.MinValue;
        long all = 0;
        for (int row = 0; row < utc.Length; row++)
        {
            least = Math.Min(least, utc[row]);
            most = Math.Max(most, utc[row]);
            all |= kinds[row];
        }

        return new BatchHead(firstSequence, utc.Length, least, most, (DecisionKinds)all);
    }

    /// <summary>Appends the head.</summary>
    public void Write(ByteSink sink)
    {
        sink.Signed(FirstSequence);
        sink.Number((ulong)Count);
        sink.Signed(LeastUtc);
        sink.Signed(MostUtc);
        sink.Signed((long)Kinds);
    }

    /// <summary>Reads a head and moves <paramref name="at"/> past it.</summary>
    public static BatchHead Read(ReadOnlySpan<byte> from, ref int at)
    {
        long firstSequence = Varint.Unfold(Varint.Read(from, ref at));
        ulong count = Varint.Read(from, ref at);
        if (count is 0 or > 1_000_000)
        {
            throw new InvalidDataException($"A block claims {count} ticks; 1 to 1,000,000 are allowed.");
        }

        long least = Varint.Unfold(Varint.Read(from, ref at));
        long most = Varint.Unfold(Varint.Read(from, ref at));
        return new BatchHead(firstSequence, (int)count, least, most, (DecisionKinds)Varint.Unfold(Varint.Read(from, ref at)));
    }
}
