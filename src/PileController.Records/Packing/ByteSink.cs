using System.Buffers.Binary;
using System.IO.Hashing;

namespace PileController.Records.Packing;

/// <summary>A growing run of bytes that is written front to back and can be sealed with a checksum.</summary>
/// <threadsafety>One thread at a time.</threadsafety>
internal sealed class ByteSink
{
    private byte[] _bytes = new byte[4096];

    /// <summary>How many bytes have been written.</summary>
    public int Length { get; private set; }

    /// <summary>What has been written.</summary>
    public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, Length);

    /// <summary>Forgets what was written and keeps the room.</summary>
    public void Clear() => Length = 0;

    /// <summary>Room for at least <paramref name="bytes"/> more; follow with <see cref="Advance"/>.</summary>
    public Span<byte> Room(int bytes)
    {
        if (_bytes.Length - Length < bytes)
        {
            Array.Resize(ref _bytes, Math.Max(_bytes.Length * 2, Length + bytes));
        }

        return _bytes.AsSpan(Length);
    }

    /// <summary>Says how much of the room was used.</summary>
    public void Advance(int bytes) => Length += bytes;

    /// <summary>Appends a packed number.</summary>
    public void Number(ulong value) => Advance(Varint.Write(Room(Varint.MostBytes), value));

    /// <summary>Appends a packed signed number.</summary>
    public void Signed(long value) => Number(Varint.Fold(value));

    /// <summary>Appends bytes as they are.</summary>
    public void Bytes(ReadOnlySpan<byte> bytes)
    {
        bytes.CopyTo(Room(bytes.Length));
        Advance(bytes.Length);
    }

    /// <summary>Appends the CRC-32 of all that was written and returns a copy of the whole.</summary>
    public byte[] Seal()
    {
        uint crc = Crc32.HashToUInt32(Written);
        BinaryPrimitives.WriteUInt32LittleEndian(Room(4), crc);
        Advance(4);
        return Written.ToArray();
    }

    /// <summary>Checks the seal and returns what it covers.</summary>
    /// <exception cref="InvalidDataException">The checksum does not fit.</exception>
    public static ReadOnlySpan<byte> Unseal(ReadOnlySpan<byte> bytes, string what)
    {
        if (bytes.Length < 4
            || Crc32.HashToUInt32(bytes[..^4]) != BinaryPrimitives.ReadUInt32LittleEndian(bytes[^4..]))
        {
            throw new InvalidDataException($"{what} does not match its checksum.");
        }

        return bytes[..^4];
    }
}
