namespace PileController.Records.Packing;

/// <summary>Whole numbers in as few bytes as they need: seven bits a byte, lowest first.</summary>
internal static class Varint
{
    public const int MostBytes = 10;

    /// <summary>Writes <paramref name="value"/> and returns how many bytes it took.</summary>
    public static int Write(Span<byte> to, ulong value)
    {
        int at = 0;
        while (value >= 0x80)
        {
            to[at++] = (byte)((value & 0x7F) | 0x80);
            value >>= 7;
        }

        to[at] = (byte)value;
        return at + 1;
    }

    /// <summary>Reads a number and moves <paramref name="at"/> past it.</summary>
    /// <exception cref="InvalidDataException">The number runs past the end or is too long.</exception>
    public static ulong Read(ReadOnlySpan<byte> from, ref int at)
    {
        ulong value = 0;
        for (int shift = 0; shift < 64; shift += 7)
        {
            if (at >= from.Length)
            {
                throw new InvalidDataException("A packed number runs past the end of its section.");
            }

            byte next = from[at++];
            value |= (ulong)(next & 0x7F) << shift;
            if (next < 0x80)
            {
                return value;
            }
        }

        throw new InvalidDataException("A packed number is longer than ten bytes.");
    }

    /// <summary>Folds signed numbers so that small ones of either sign stay small.</summary>
    public static ulong Fold(long value) => unchecked((ulong)((value << 1) ^ (value >> 63)));

    /// <summary>Undoes <see cref="Fold"/>.</summary>
    public static long Unfold(ulong value) => unchecked((long)(value >> 1) ^ -(long)(value & 1));
}
