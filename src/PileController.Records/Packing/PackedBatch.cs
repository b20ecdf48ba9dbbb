using System.Buffers.Binary;
using System.Text.Json;
using PileController.Control;
using PileController.Control.Readings;

namespace PileController.Records.Packing;

/// <summary>A packed batch whose checksum has been found to fit.</summary>
/// <threadsafety>Immutable: safe from any thread.</threadsafety>
internal sealed class PackedBatch
{
    private readonly (int At, int Stored, int Plain)[] _columns;
    private readonly int _textAt;

    private PackedBatch(byte[] bytes, BatchHead head, (int At, int Stored, int Plain)[] columns, int textAt)
    {
        Bytes = bytes;
        Head = head;
        _columns = columns;
        _textAt = textAt;
    }

    /// <summary>The sealed bytes.</summary>
    public byte[] Bytes { get; }

    /// <summary>What can be told without opening the columns.</summary>
    public BatchHead Head { get; }

    /// <summary>Number of its first tick.</summary>
    public long FirstSequence => Head.FirstSequence;

    /// <summary>How many ticks.</summary>
    public int Count => Head.Count;

    /// <summary>Checks the seal and reads head and directory.</summary>
    /// <exception cref="InvalidDataException">Damaged, or of a version this build does not know.</exception>
    public static PackedBatch Parse(byte[] bytes)
    {
        ReadOnlySpan<byte> body = ByteSink.Unseal(bytes, "A block of ticks");
        if (body.IsEmpty || body[0] != BatchPacker.Version)
        {
            throw new InvalidDataException("A block of ticks has a version this build does not know.");
        }

        int at = 1;
        BatchHead head = BatchHead.Read(body, ref at);
        int end = (int)Varint.Read(body, ref at) + at;
        var columns = new (int At, int Stored, int Plain)[TickColumns.Count];
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
            ? new PackedBatch(bytes, head, columns, columnAt)
            : throw new InvalidDataException("The directory of a block does not fit its columns.");
    }

    /// <summary>Unpacks one column into <paramref name="cells"/>, which has <see cref="Count"/> entries.</summary>
    /// <exception cref="InvalidDataException">The column is damaged.</exception>
    public void Column(int column, Span<long> cells)
    {
        (int at, int stored, int plain) = _columns[column];
        ReadOnlySpan<byte> section = Bytes.AsSpan(at, stored);
        if (column == TickColumns.Digest)
        {
            for (int row = 0; row < cells.Length; row++)
            {
                cells[row] = BinaryPrimitives.ReadInt64LittleEndian(section[(row * 8)..]);
            }
        }
        else if (plain == stored)
        {
            IntegerColumn.Unpack(section, TickColumns.DifferencesOf(column), cells);
        }
        else
        {
            byte[] buffer = new byte[plain];
            Squeeze.Unpack(section, buffer);
            IntegerColumn.Unpack(buffer, TickColumns.DifferencesOf(column), cells);
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
        JsonSerializer.Deserialize<BatchText>(Section.Read(Bytes.AsSpan(_textAt, Bytes.Length - 4 - _textAt)), RecordJson.Options)
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
        long[][] columns = [.. Enumerable.Range(TickColumns.FirstChannel, TickColumns.Count - TickColumns.FirstChannel).Select(Column)];
        RigReadings[] readings = new RigReadings[Count];
        for (int row = 0; row < Count; row++)
        {
            Reading[] one = new Reading[ChannelTable.Count];
            for (int channel = 0; channel < one.Length; channel++)
            {
                int column = channel * TickColumns.PerChannel;
                one[channel] = new Reading(
                    (int)columns[column + TickColumns.RawQuanta][row],
                    (ReadingQuality)columns[column + TickColumns.RawQuality][row],
                    (int)columns[column + TickColumns.RawAge][row]);
            }

            readings[row] = new RigReadings(one);
        }

        return readings;
    }
}
