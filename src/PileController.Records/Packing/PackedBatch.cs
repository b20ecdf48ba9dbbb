using System.Text.Json;
using PileController.Control;
using PileController.Control.Readings;

namespace PileController.Records.Packing;

/// <summary>A packed batch whose checksum has been found to fit.</summary>
/// <threadsafety>Immutable: safe from any thread.</threadsafety>
internal sealed class PackedBatch
{
    private const int FirstColumns = TickColumns.FirstChannel + (TickColumns.PerChannel * ChannelTable.FirstCount);
    private readonly ColumnIndex _columns;
    private readonly int _written;

    private PackedBatch(byte[] bytes, BatchHead head, int written, ColumnIndex columns)
    {
        Bytes = bytes;
        Head = head;
        _written = written;
        _columns = columns;
    }

    /// <summary>The sealed bytes.</summary>
    public byte[] Bytes { get; }

    /// <summary>What can be told without opening the columns.</summary>
    public BatchHead Head { get; }

    /// <summary>Number of its first tick.</summary>
    public long FirstSequence => Head.FirstSequence;

    /// <summary>How many ticks.</summary>
    public int Count => Head.Count;

    /// <summary>Its bytes up to the text that goes with the ticks: <see cref="Of"/> makes the batch again.</summary>
    public ReadOnlySpan<byte> WithoutText => Bytes.AsSpan(0, _columns.End);

    /// <summary>Joins the bytes up to the text with a text, and seals them.</summary>
    /// <exception cref="InvalidDataException">They are no such bytes.</exception>
    public static PackedBatch Of(ReadOnlySpan<byte> withoutText, BatchText text)
    {
        ByteSink whole = new();
        whole.Bytes(withoutText);
        Section.Write(whole, JsonSerializer.SerializeToUtf8Bytes(text, RecordJson.Options));
        return Parse(whole.Seal());
    }

    /// <summary>Checks the seal and reads head and directory.</summary>
    /// <exception cref="InvalidDataException">Damaged, or of a version this build does not know.</exception>
    public static PackedBatch Parse(byte[] bytes)
    {
        ReadOnlySpan<byte> body = ByteSink.Unseal(bytes, "A block of ticks");
        if (body.IsEmpty || body[0] is not (BatchPacker.FirstVersion or BatchPacker.Version))
        {
            throw new InvalidDataException("A block of ticks has a version this build does not know.");
        }

        int at = 1;
        BatchHead head = BatchHead.Read(body, ref at);
        ulong written = body[0] == BatchPacker.FirstVersion ? FirstColumns : Varint.Read(body, ref at);
        if (written is < TickColumns.FirstChannel or > TickColumns.Count)
        {
            throw new InvalidDataException(
                $"A block of ticks has {written} columns; this build knows {TickColumns.FirstChannel} to {TickColumns.Count}. A later one may have written it.");
        }

        return new PackedBatch(bytes, head, (int)written, ColumnIndex.Read(bytes, body, at, (int)written));
    }

    /// <summary>
    /// Unpacks one column into <paramref name="cells"/>, which has <see cref="Count"/> entries: noughts for one that was not
    /// written, which say that a channel is not fitted.
    /// </summary>
    /// <exception cref="InvalidDataException">The column is damaged.</exception>
    public void Column(int column, Span<long> cells)
    {
        if (column >= _written)
        {
            cells.Clear();
        }
        else if (column == TickColumns.Digest)
        {
            _columns.UnpackNoise(column, cells);
        }
        else
        {
            _columns.Unpack(column, TickColumns.DifferencesOf(column), cells);
        }
    }

    /// <summary>Unpacks one column.</summary>
    public long[] Column(int column)
    {
        long[] cells = new long[Count];
        Column(column, cells);
        return cells;
    }

    /// <summary>What goes with the ticks and is not a column of numbers.</summary>
    public BatchText Text() =>
        JsonSerializer.Deserialize<BatchText>(Section.Read(Bytes.AsSpan(_columns.End, Bytes.Length - 4 - _columns.End)), RecordJson.Options)
        ?? throw new InvalidDataException("The text of a block is null.");

    /// <summary>The moments of all ticks.</summary>
    public Instant[] Instants()
    {
        long[] utc = Column(TickColumns.Utc);
        long[] monotonic = Column(TickColumns.Monotonic);
        long[] offset = Column(TickColumns.Offset);
        Instant[] instants = new Instant[Count];
        for (int row = 0; row < Count; row++)
        {
            instants[row] = new Instant(utc[row], monotonic[row], (int)offset[row]);
        }

        return instants;
    }

    /// <summary>What control was given at each tick, before validation.</summary>
    public RigReadings[] RawReadings()
    {
        var readings = new RigReadings[Count];
        var cells = new Reading[Count][];
        for (int row = 0; row < Count; row++)
        {
            cells[row] = new Reading[ChannelTable.Count];
        }

        long[] quanta = new long[Count];
        long[] quality = new long[Count];
        long[] age = new long[Count];
        foreach (ChannelInfo channel in ChannelTable.All)
        {
            Column(TickColumns.Of(channel.Channel, TickColumns.RawQuanta), quanta);
            Column(TickColumns.Of(channel.Channel, TickColumns.RawQuality), quality);
            Column(TickColumns.Of(channel.Channel, TickColumns.RawAge), age);
            for (int row = 0; row < Count; row++)
            {
                cells[row][(int)channel.Channel] = new Reading((int)quanta[row], (ReadingQuality)quality[row], (int)age[row]);
            }
        }

        for (int row = 0; row < Count; row++)
        {
            readings[row] = new RigReadings(cells[row]);
        }

        return readings;
    }
}
