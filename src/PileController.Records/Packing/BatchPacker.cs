
namespace PileController.Records.Packing;

/// <summary>
/// Writes a batch: version, head, how many columns, the columns with their directory, the text, a CRC-32. Columns at the
/// end that hold nothing but noughts are left out, as those of channels nobody has.
/// </summary>
/// <threadsafety>One thread at a time: the buffers are reused.</threadsafety>
internal sealed class BatchPacker
{
    public const byte Version = 2;

    /// <summary>The first version: it did not tell how many columns there are, and always had those of the first channels.</summary>
    public const byte FirstVersion = 1;

    private readonly ColumnSink _columns = new();
    private readonly ByteSink _whole = new();

    /// <summary>Packs the first <paramref name="count"/> rows of <paramref name="cells"/>, whose columns are <paramref name="stride"/> apart.</summary>
    public PackedBatch Pack(long firstSequence, int count, long[] cells, int stride, BatchText text, bool squeeze)
    {
        _columns.Clear();
        _whole.Clear();
        int columns = Filled(cells, stride, count);
        for (int column = 0; column < columns; column++)
        {
            ReadOnlySpan<long> some = cells.AsSpan(column * stride, count);
            if (column == TickColumns.Digest)
            {
                _columns.AddNoise(some);
            }
            else
            {
                _columns.Add(some, TickColumns.DifferencesOf(column), squeeze);
            }
        }

        BatchHead head = BatchHead.Of(
            firstSequence, cells.AsSpan(TickColumns.Utc * stride, count), cells.AsSpan(TickColumns.Kinds * stride, count));
        _whole.Bytes([Version]);
        head.Write(_whole);
        _whole.Number((ulong)columns);
        _columns.WriteTo(_whole);
        return PackedBatch.Of(_whole.Written, text);
    }

    private static int Filled(long[] cells, int stride, int count)
    {
        int columns = TickColumns.Count;
        while (columns > TickColumns.FirstChannel && !cells.AsSpan((columns - 1) * stride, count).ContainsAnyExcept(0))
        {
            columns--;
        }

        return columns;
    }
}
