using System.Buffers.Binary;

namespace PileController.Records.Packing;

/// <summary>Where the columns that a <see cref="ColumnSink"/> wrote lie in a run of bytes.</summary>
/// <threadsafety>Safe from any thread: what is remembered can be made twice, and is the same.</threadsafety>
internal sealed class ColumnIndex
{
    private readonly byte[] _bytes;

    // Expanding a compressed column takes many times as long as unpacking it.
    private readonly byte[]?[] _expanded;
    private readonly (int At, int Stored, int Plain)[] _columns;

    private ColumnIndex(byte[] bytes, (int At, int Stored, int Plain)[] columns, int end)
    {
        _bytes = bytes;
        _columns = columns;
        _expanded = new byte[columns.Length][];
        End = end;
    }

    /// <summary>Where the last column ends.</summary>
    public int End { get; }

    /// <summary>Reads the directory at <paramref name="at"/>.</summary>
    /// <param name="bytes">The sealed bytes.</param>
    /// <param name="body">What the seal covers.</param>
    /// <param name="at">Where the directory begins.</param>
    /// <param name="count">How many columns there have to be.</param>
    /// <exception cref="InvalidDataException">The directory does not fit.</exception>
    public static ColumnIndex Read(byte[] bytes, ReadOnlySpan<byte> body, int at, int count)
    {
        int end = (int)Varint.Read(body, ref at) + at;
        var columns = new (int At, int Stored, int Plain)[count];
        int columnAt = end;
        for (int column = 0; column < columns.Length; column++)
        {
            ulong entry = Varint.Read(body, ref at);
            int stored = (int)(entry >> 1);
            int plain = (entry & 1) == 0 ? stored : (int)Varint.Read(body, ref at);
            columns[column] = (columnAt, stored, plain);
            columnAt += stored;
        }

        return at == end && columnAt <= body.Length
            ? new ColumnIndex(bytes, columns, columnAt)
            : throw new InvalidDataException("A directory of columns does not fit them.");
    }

    /// <summary>Unpacks a column of differences; the length of <paramref name="cells"/> says how many there are.</summary>
    /// <exception cref="InvalidDataException">The column is damaged.</exception>
    public void Unpack(int column, int differences, Span<long> cells)
    {
        (int at, int stored, int plain) = _columns[column];
        ReadOnlySpan<byte> section = _bytes.AsSpan(at, stored);
        if (plain == stored)
        {
            IntegerColumn.Unpack(section, differences, cells);
        }
        else
        {
            IntegerColumn.Unpack(_expanded[column] ??= Expand(section, plain), differences, cells);
        }
    }

    /// <summary>Unpacks a column of noise.</summary>
    public void UnpackNoise(int column, Span<long> cells)
    {
        (int at, int stored, _) = _columns[column];
        ReadOnlySpan<byte> section = _bytes.AsSpan(at, stored);
        for (int row = 0; row < cells.Length; row++)
        {
            cells[row] = BinaryPrimitives.ReadInt64LittleEndian(section[(row * 8)..]);
        }
    }

    private static byte[] Expand(ReadOnlySpan<byte> section, int plain)
    {
        byte[] buffer = new byte[plain];
        Squeeze.Unpack(section, buffer);
        return buffer;
    }
}
