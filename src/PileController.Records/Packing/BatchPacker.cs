using System.Buffers.Binary;
using System.Text.Json;

namespace PileController.Records.Packing;

/// <summary>
/// Writes a batch: version, head, a directory of column lengths, the columns, the text, a CRC-32. Each column can
/// be unpacked without the others.
/// </summary>
/// <threadsafety>One thread at a time: the buffers are reused.</threadsafety>
internal sealed class BatchPacker
{
    public const byte Version = 1;
    private readonly ByteSink _directory = new();
    private readonly ByteSink _columns = new();
    private readonly ByteSink _whole = new();
    private byte[] _plain = new byte[4096];

    /// <summary>Packs the first <paramref name="count"/> rows of <paramref name="cells"/>, whose columns are <paramref name="stride"/> apart.</summary>
    public PackedBatch Pack(long firstSequence, int count, long[] cells, int stride, BatchText text, bool squeeze)
    {
        _directory.Clear();
        _columns.Clear();
        _whole.Clear();
        for (int column = 0; column < TickColumns.Count; column++)
        {
            Column(column, cells.AsSpan(column * stride, count), squeeze);
        }

        BatchHead head = BatchHead.Of(
            firstSequence, cells.AsSpan(TickColumns.Utc * stride, count), cells.AsSpan(TickColumns.Kinds * stride, count));
        _whole.Bytes([Version]);
        head.Write(_whole);
        _whole.Number((ulong)_directory.Length);
        _whole.Bytes(_directory.Written);
        _whole.Bytes(_columns.Written);
        Section.Write(_whole, JsonSerializer.SerializeToUtf8Bytes(text, RecordJson.Options));
        return PackedBatch.Parse(_whole.Seal());
    }

    // A directory entry is the stored length, and the plain length as well when the column is compressed.
    private void Column(int column, ReadOnlySpan<long> cells, bool squeeze)
    {
        if (column == TickColumns.Digest)
        {
            Digests(cells);
            return;
        }

        if (_plain.Length < IntegerColumn.MostBytes(cells.Length))
        {
            _plain = new byte[IntegerColumn.MostBytes(cells.Length)];
        }

        int length = IntegerColumn.Pack(cells, TickColumns.DifferencesOf(column), _plain);
        ReadOnlySpan<byte> plain = _plain.AsSpan(0, length);
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

    // Digests look like noise: no packing makes them smaller.
    private void Digests(ReadOnlySpan<long> cells)
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
}
