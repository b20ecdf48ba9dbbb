using System.Buffers.Binary;
using System.Text.Json;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// One frame of the tail: mark, length, kind, body, filling, CRC-32 over all of it. One sync makes one frame, so a frame that
/// is torn was never acknowledged. A frame ends where a page of the file ends, so that an append never writes a page twice.
/// </summary>
internal static class TailFrame
{
    public const uint Mark = 0x454C4950;
    public const byte BaseKind = 1;
    public const byte TicksKind = 2;
    public const byte LeanKind = 3;
    public const int HeadBytes = 9;
    public const int LeastBytes = HeadBytes + 4;

    /// <summary>What a file system writes at least.</summary>
    public const int PageBytes = 4096;

    /// <summary>Makes a whole frame of packed batches, or a lean one where that is fewer pages and not too many have gone before.</summary>
    /// <param name="packs">The batches.</param>
    /// <param name="at">Where in the file the frame will begin.</param>
    /// <param name="known">What a lean one may build on.</param>
    /// <param name="mostLean">So many lean frames may follow a whole one.</param>
    /// <returns>The frame, and what the next one may build on.</returns>
    public static (byte[] Frame, TailMemories After) Of(IReadOnlyList<PackedTicks> packs, long at, TailMemories known, int mostLean)
    {
        byte[] whole = Of(packs, at);
        if (known.Lean < mostLean && LeanFrame.Of(packs, known) is { } lean)
        {
            byte[] frame = Frame(LeanKind, lean.Body, at, filler: 0);
            if (frame.Length < whole.Length)
            {
                return (frame, lean.After);
            }
        }

        return (whole, TailMemories.After(packs));
    }

    /// <summary>Makes the frame a tail begins with.</summary>
    public static byte[] Of(TailBase start) =>
        Frame(BaseKind, JsonSerializer.SerializeToUtf8Bytes(start, RecordJson.Options), at: 0, filler: (byte)' ');

    /// <summary>The batches in the body of a frame that holds ticks.</summary>
    /// <param name="kind">The frame's kind.</param>
    /// <param name="body">Its body.</param>
    /// <param name="known">What a lean one may build on.</param>
    /// <returns>The batches, and what the next frame may build on.</returns>
    /// <exception cref="InvalidDataException">This build does not know such a frame.</exception>
    public static (IReadOnlyList<PackedTicks> Packs, TailMemories After) Read(byte kind, byte[] body, TailMemories known)
    {
        switch (kind)
        {
            case TicksKind:
                IReadOnlyList<PackedTicks> packs = [.. Packs(body)];
                return (packs, TailMemories.After(packs));
            case LeanKind:
                return LeanFrame.Read(body, known);
            default:
                throw new InvalidDataException($"The tail has a frame of kind {kind}, which this build does not know. A later one may have written it.");
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

    /// <summary>Appends a part that <see cref="Part"/> reads.</summary>
    public static void Write(ByteSink body, ReadOnlySpan<byte> part)
    {
        body.Number((ulong)part.Length);
        body.Bytes(part);
    }

    /// <summary>A part of a frame's body; moves <paramref name="at"/> past it.</summary>
    /// <exception cref="InvalidDataException">It is longer than the body.</exception>
    public static byte[] Part(ReadOnlySpan<byte> body, ref int at)
    {
        ulong length = Varint.Read(body, ref at);
        if (length > (ulong)(body.Length - at))
        {
            throw new InvalidDataException("A tail frame holds a part longer than itself.");
        }

        byte[] part = body.Slice(at, (int)length).ToArray();
        at += part.Length;
        return part;
    }

    private static byte[] Of(IReadOnlyList<PackedTicks> packs, long at)
    {
        ByteSink body = new();
        body.Number((ulong)packs.Count);
        foreach (PackedTicks pack in packs)
        {
            Write(body, pack.Batch.Bytes);
            Write(body, pack.Lines?.Bytes ?? []);
        }

        return Frame(TicksKind, body.Written, at, filler: 0);
    }

    private static IEnumerable<PackedTicks> Packs(byte[] body)
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

    // A body is told by its own lengths or is JSON, so that an earlier build reads over the filling as well.
    private static byte[] Frame(byte kind, ReadOnlySpan<byte> body, long at, byte filler)
    {
        int filling = (int)((PageBytes - ((at + LeastBytes + body.Length) % PageBytes)) % PageBytes);
        ByteSink frame = new();
        Span<byte> head = frame.Room(HeadBytes);
        BinaryPrimitives.WriteUInt32LittleEndian(head, Mark);
        BinaryPrimitives.WriteUInt32LittleEndian(head[4..], (uint)(body.Length + filling));
        head[8] = kind;
        frame.Advance(HeadBytes);
        frame.Bytes(body);
        frame.Room(filling)[..filling].Fill(filler);
        frame.Advance(filling);
        return frame.Seal();
    }
}
