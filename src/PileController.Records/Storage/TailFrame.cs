using System.Buffers.Binary;
using System.Text.Json;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// One frame of the tail: mark, length, kind, body, CRC-32 over all of it. One sync makes one frame, so a frame that
/// is torn was never acknowledged.
/// </summary>
internal static class TailFrame
{
    public const uint Mark = 0x454C4950;
    public const byte BaseKind = 1;
    public const byte TicksKind = 2;
    public const int HeadBytes = 9;
    public const int LeastBytes = HeadBytes + 4;

    /// <summary>Makes a frame of packed batches.</summary>
    public static byte[] Of(IReadOnlyList<PackedTicks> packs)
    {
        ByteSink body = new();
        body.Number((ulong)packs.Count);
        foreach (PackedTicks pack in packs)
        {
            byte[] lines = pack.Lines?.Bytes ?? [];
            body.Number((ulong)pack.Batch.Bytes.Length);
            body.Bytes(pack.Batch.Bytes);
            body.Number((ulong)lines.Length);
            body.Bytes(lines);
        }

        return Frame(TicksKind, body.Written);
    }

    /// <summary>Makes the frame a tail begins with.</summary>
    public static byte[] Of(TailBase start) =>
        Frame(BaseKind, JsonSerializer.SerializeToUtf8Bytes(start, RecordJson.Options));

    /// <summary>The batches in a frame's body.</summary>
    public static IEnumerable<PackedTicks> Packs(byte[] body)
    {
        int at = 0;
        ulong count = Varint.Read(body, ref at);
        for (ulong i = 0; i < count; i++)
        {
            PackedBatch batch = PackedBatch.Parse(Part(body, ref at));
            byte[] lines = Part(body, ref at);
            yield return new PackedTicks(batch, lines.Length == 0 ? null : new PackedLines(lines));
        }
    }

    /// <summary>Finds a whole frame at <paramref name="at"/>; false when there is none.</summary>
    public static bool TryRead(ReadOnlySpan<byte> bytes, int at, out byte kind, out byte[] body, out int next)
    {
        kind = 0;
        body = [];
        next = at;
        ReadOnlySpan<byte> rest = bytes[at..];
        if (rest.Length < LeastBytes || BinaryPrimitives.ReadUInt32LittleEndian(rest) != Mark)
        {
            return false;
        }

        uint length = BinaryPrimitives.ReadUInt32LittleEndian(rest[4..]);
        if (length > (uint)(rest.Length - LeastBytes))
        {
            return false;
        }

        int total = (int)length + LeastBytes;
        try
        {
            ReadOnlySpan<byte> frame = ByteSink.Unseal(rest[..total], "A tail frame");
            kind = frame[8];
            body = frame[HeadBytes..].ToArray();
            next = at + total;
            return true;
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    private static byte[] Frame(byte kind, ReadOnlySpan<byte> body)
    {
        ByteSink frame = new();
        Span<byte> head = frame.Room(HeadBytes);
        BinaryPrimitives.WriteUInt32LittleEndian(head, Mark);
        BinaryPrimitives.WriteUInt32LittleEndian(head[4..], (uint)body.Length);
        head[8] = kind;
        frame.Advance(HeadBytes);
        frame.Bytes(body);
        return frame.Seal();
    }

    private static byte[] Part(ReadOnlySpan<byte> body, ref int at)
    {
        ulong length = Varint.Read(body, ref at);
        if (length > (ulong)(body.Length - at))
        {
            throw new InvalidDataException("A tail frame holds a batch longer than itself.");
        }

        byte[] part = body.Slice(at, (int)length).ToArray();
        at += part.Length;
        return part;
    }
}

/// <summary>What a tail begins after.</summary>
/// <param name="LastSequence">Last tick that the store held when the tail was begun; 0 when it held none.</param>
/// <param name="Memory">What that tick handed on.</param>
internal sealed record TailBase(long LastSequence, JsonElement? Memory)
{
    /// <summary>What the files that are still written held then; an earlier build did not tell.</summary>
    public IReadOnlyList<OpenFile> OpenFiles { get; init; } = [];
}
