namespace PileController.Records.Packing;

/// <summary>
/// What of a text differs from another, piece by piece between its commas. A memory's JSON has the same pieces from one
/// minute to the next, and few of them change; in those that do, the first bytes, which are the name, stay.
/// </summary>
internal static class TextDifference
{
    private const byte Comma = (byte)',';

    /// <summary>What makes <paramref name="to"/> of <paramref name="from"/>, or null when the two do not have as many pieces.</summary>
    public static byte[]? Of(ReadOnlySpan<byte> from, ReadOnlySpan<byte> to)
    {
        ByteSink places = new();
        ByteSink rests = new();
        ulong changed = 0;
        ulong same = 0;
        MemoryExtensions.SpanSplitEnumerator<byte> pieces = from.Split(Comma);
        foreach (Range range in to.Split(Comma))
        {
            if (!pieces.MoveNext())
            {
                return null;
            }

            ReadOnlySpan<byte> old = from[pieces.Current];
            ReadOnlySpan<byte> fresh = to[range];
            if (old.SequenceEqual(fresh))
            {
                same++;
                continue;
            }

            int kept = old.CommonPrefixLength(fresh);
            places.Number(same);
            places.Number((ulong)kept);
            rests.Bytes(fresh[kept..]);
            rests.Bytes([Comma]);
            changed++;
            same = 0;
        }

        if (pieces.MoveNext())
        {
            return null;
        }

        ByteSink difference = new();
        difference.Number(changed);
        difference.Bytes(places.Written);
        difference.Bytes(rests.Written);
        return difference.Written.ToArray();
    }

    /// <summary>Makes the text again from the one the difference was made with.</summary>
    /// <exception cref="InvalidDataException">It is not a difference to that text.</exception>
    public static byte[] Apply(ReadOnlySpan<byte> from, ReadOnlySpan<byte> difference)
    {
        int at = 0;
        Queue<(ulong Same, int Kept)> places = Places(difference, ref at);
        ByteSink to = new();
        ulong same = 0;
        bool isFirst = true;
        foreach (Range range in from.Split(Comma))
        {
            to.Bytes(isFirst ? [] : [Comma]);
            isFirst = false;
            ReadOnlySpan<byte> piece = from[range];
            if (!places.TryPeek(out (ulong Same, int Kept) place) || place.Same != same)
            {
                to.Bytes(piece);
                same++;
                continue;
            }

            int length = difference[at..].IndexOf(Comma);
            if (length < 0 || place.Kept > piece.Length)
            {
                throw new InvalidDataException("A difference does not fit the text it was made with.");
            }

            to.Bytes(piece[..place.Kept]);
            to.Bytes(difference.Slice(at, length));
            at += length + 1;
            places.Dequeue();
            same = 0;
        }

        return places.Count == 0 && at == difference.Length
            ? to.Written.ToArray()
            : throw new InvalidDataException("A difference does not fit the text it was made with.");
    }

    private static Queue<(ulong Same, int Kept)> Places(ReadOnlySpan<byte> difference, ref int at)
    {
        Queue<(ulong Same, int Kept)> places = [];
        for (ulong left = Varint.Read(difference, ref at); left > 0; left--)
        {
            places.Enqueue((Varint.Read(difference, ref at), (int)Math.Min(Varint.Read(difference, ref at), int.MaxValue)));
        }

        return places;
    }
}
