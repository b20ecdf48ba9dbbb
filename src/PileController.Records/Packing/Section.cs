namespace PileController.Records.Packing;

/// <summary>A text that fills the rest of a sealed run of bytes: its plain length, then itself, compressed where that pays.</summary>
internal static class Section
{
    private const int MostPlainBytes = 64 * 1024 * 1024;

    /// <summary>Appends <paramref name="plain"/>.</summary>
    public static void Write(ByteSink sink, ReadOnlySpan<byte> plain)
    {
        sink.Number((ulong)plain.Length);
        if (Squeeze.TryPack(plain, sink.Room(plain.Length), out int written))
        {
            sink.Advance(written);
        }
        else
        {
            sink.Bytes(plain);
        }
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <exception cref="InvalidDataException">The section is damaged.</exception>
    public static byte[] Read(ReadOnlySpan<byte> from)
    {
        int at = 0;
        ulong length = Varint.Read(from, ref at);
        if (length > MostPlainBytes)
        {
            throw new InvalidDataException($"A section claims {length} bytes; at most {MostPlainBytes} are allowed.");
        }

        byte[] plain = new byte[length];
        ReadOnlySpan<byte> rest = from[at..];
        if (rest.Length == plain.Length)
        {
            rest.CopyTo(plain);
        }
        else
        {
            Squeeze.Unpack(rest, plain);
        }

        return plain;
    }
}
