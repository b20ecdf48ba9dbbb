using System.Buffers.Binary;

namespace PileController.Records.Packing;

/// <summary>
/// Packs columns of whole numbers one after another and keeps a directory of their lengths, so that each can be
/// unpacked without the others. <see cref="ColumnIndex"/> reads it.
/// </summary>
/// <threadsafety>One thread at a time: the buffers are reused.</threadsafety>
internal sealed class ColumnSink
{
    private readonly ByteSink _directory = new();
    private readonly ByteSink _columns = new();
    private byte[] _plain = new byte[4096];

    /// <summary>Forgets all columns.</summary>
    public void Clear()
    {
        _directory.Clear();
        _columns.Clear();
    }

    /// <summary>Adds a column of differences; see <see cref="IntegerColumn"/>.</summary>
    /// <param name="cells">The numbers.</param>
    /// <param name="differences">How often they are differenced, 1 or 2.</param>
    /// <param name="squeeze">Whether to spend time on making it small.</param>
    public void Add(ReadOnlySpan<long> cells, int differences, bool squeeze)
    {
        if (_plain.Length < IntegerColumn.MostBytes(cells.Length))
        {
            _plain = new byte[IntegerColumn.MostBytes(cells.Length)];
        }

        int length = IntegerColumn.Pack(cells, differences, _plain);
        ReadOnlySpan<byte> plain = _plain.AsSpan(0, length);

        // A directory entry is the stored length, and the plain length as well when the column is compressed.
        if (squeeze && Squeeze.TryPack(plain, _columns.Room(length), out int written))
        {
            _directory.Number(((ulong)written << 1) | 1);
            _directory.Number((ulong)length);
            _columns.Advance(written);
            return;
        }

        _directory.Number((ulong)length << 1);
        _columns.Bytes(plain);
    }

    /// <summary>Adds a column of numbers that look like noise, eight bytes each: no packing makes them smaller.</summary>
    public void AddNoise(ReadOnlySpan<long> cells)
    {
        int length = cells.Length * 8;
        Span<byte> room = _columns.Room(length);
        for (int row = 0; row < cells.Length; row++)
        {
            BinaryPrimitives.WriteInt64LittleEndian(room[(row * 8)..], cells[row]);
        }

        _columns.Advance(length);
        _directory.Number((ulong)length << 1);
    }

    /// <summary>Appends directory and columns.</summary>
    public void WriteTo(ByteSink sink)
    {
        sink.Number((ulong)_directory.Length);
        sink.Bytes(_directory.Written);
        sink.Bytes(_columns.Written);
    }
}
