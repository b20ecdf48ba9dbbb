namespace PileController.Records.Packing;

/// <summary>
/// Packs a column of whole numbers as folded differences. A nought is followed by how many noughts stand in a
/// row, so a column that does not change takes a few bytes however long it is.
/// </summary>
internal static class IntegerColumn
{
    /// <summary>Most bytes a column of so many cells can take.</summary>
    public static int MostBytes(int cells) => (cells * Varint.MostBytes) + Varint.MostBytes;

    /// <summary>Packs <paramref name="cells"/> and returns the bytes taken. Differences wrap round, so any number is allowed.</summary>
    public static int Pack(ReadOnlySpan<long> cells, int differences, Span<byte> to)
    {
        int at = 0;
        ulong noughts = 0;
        long before = 0;
        long slope = 0;
        foreach (long cell in cells)
        {
            long change = unchecked(cell - before);
            before = cell;
            long token = differences == 2 ? unchecked(change - slope) : change;
            slope = change;
            if (token == 0)
            {
                noughts++;
                continue;
            }

            at += Noughts(to[at..], noughts);
            noughts = 0;
            at += Varint.Write(to[at..], Varint.Fold(token));
        }

        return at + Noughts(to[at..], noughts);
    }

    /// <summary>Unpacks into <paramref name="cells"/>, whose length says how many there are.</summary>
    /// <exception cref="InvalidDataException">The section holds more or fewer cells than that.</exception>
    public static void Unpack(ReadOnlySpan<byte> from, int differences, Span<long> cells)
    {
        int at = 0;
        ulong noughts = 0;
        long before = 0;
        long slope = 0;
        for (int row = 0; row < cells.Length; row++)
        {
            long token = 0;
            if (noughts > 0)
            {
                noughts--;
            }
            else
            {
                token = Varint.Unfold(Varint.Read(from, ref at));
                if (token == 0)
                {
                    ulong run = Varint.Read(from, ref at);
                    if (run == 0 || run > (ulong)(cells.Length - row))
                    {
                        throw new InvalidDataException("A run of equal cells does not fit its column.");
                    }

                    noughts = run - 1;
                }
            }

            slope = differences == 2 ? unchecked(slope + token) : token;
            before = unchecked(before + slope);
            cells[row] = before;
        }

        if (at != from.Length)
        {
            throw new InvalidDataException("A column holds more cells than its batch has ticks.");
        }
    }

    private static int Noughts(Span<byte> to, ulong run)
    {
        if (run == 0)
        {
            return 0;
        }

        to[0] = 0;
        return 1 + Varint.Write(to[1..], run);
    }
}
