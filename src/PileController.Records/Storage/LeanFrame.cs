using System.Buffers.Binary;
using System.IO.Hashing;
using System.Text.Json;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// The body of a frame that holds no memory whole: what its first tick was given is what the frame before handed on, and
/// what its ticks handed on is told by what differs from the newest whole frame's. Both are named by their CRC-32, so that
/// where one of the two is damaged a memory is lost, and never a wrong one made. Ticks and lines need neither.
/// </summary>
internal static class LeanFrame
{
    private const int NameBytes = 4;

    /// <summary>The body of a lean frame and the memories after it, or null when the batches cannot be told like that.</summary>
    public static (byte[] Body, TailMemories After)? Of(IReadOnlyList<PackedTicks> packs, TailMemories known)
    {
        if (known is not { Whole: { } whole, Last: { } last })
        {
            return null;
        }

        ByteSink body = new();
        Name(body, whole);
        Name(body, last);
        body.Number((ulong)packs.Count);
        foreach (PackedTicks pack in packs)
        {
            BatchText text = pack.Batch.Text();
            byte[] after = TailMemories.BytesOf(text.MemoryAfter);
            if (!TailMemories.BytesOf(text.MemoryBefore).AsSpan().SequenceEqual(last) || TextDifference.Of(whole, after) is not { } difference)
            {
                return null;
            }

            TailFrame.Write(body, pack.Batch.WithoutText);
            TailFrame.Write(body, pack.Lines?.Bytes ?? []);
            TailFrame.Write(body, Rest(text, difference));
            last = after;
        }

        return (body.Written.ToArray(), known with { Last = last, Lean = known.Lean + 1 });
    }

    /// <summary>The batches in a body. A memory that cannot be made is <see cref="BatchText.Lost"/> in them.</summary>
    /// <exception cref="InvalidDataException">It is no body of a lean frame.</exception>
    public static (IReadOnlyList<PackedTicks> Packs, TailMemories After) Read(byte[] body, TailMemories known)
    {
        byte[]? whole = IsNamed(body, 0, known.Whole) ? known.Whole : null;
        byte[]? last = IsNamed(body, NameBytes, known.Last) ? known.Last : null;
        int at = 2 * NameBytes;
        ulong count = Varint.Read(body, ref at);
        List<PackedTicks> packs = [];
        for (ulong i = 0; i < count; i++)
        {
            byte[] ticks = TailFrame.Part(body, ref at);
            byte[] lines = TailFrame.Part(body, ref at);
            (LeanText text, byte[] difference) = RestOf(TailFrame.Part(body, ref at));
            byte[]? after = whole is null ? null : TextDifference.Apply(whole, difference);
            PackedBatch batch = PackedBatch.Of(ticks, new BatchText(text.Origin, Memory(last), Memory(after), text.Commands));
            packs.Add(new PackedTicks(batch, lines.Length == 0 ? null : new PackedLines(lines)));
            last = after;
        }

        return (packs, known with { Last = last, Lean = known.Lean + 1 });
    }

    private static byte[] Rest(BatchText text, byte[] difference)
    {
        ByteSink plain = new();
        TailFrame.Write(plain, JsonSerializer.SerializeToUtf8Bytes(new LeanText(text.Origin, text.Commands), RecordJson.Options));
        plain.Bytes(difference);
        ByteSink rest = new();
        Section.Write(rest, plain.Written);
        return rest.Written.ToArray();
    }

    private static (LeanText Text, byte[] Difference) RestOf(byte[] rest)
    {
        byte[] plain = Section.Read(rest);
        int at = 0;
        LeanText text = JsonSerializer.Deserialize<LeanText>(TailFrame.Part(plain, ref at), RecordJson.Options)
            ?? throw new InvalidDataException("The text of a lean frame is null.");
        return (text, plain[at..]);
    }

    private static JsonElement Memory(byte[]? json) =>
        json is null ? BatchText.Lost : JsonSerializer.Deserialize<JsonElement>(json, RecordJson.Options);

    private static void Name(ByteSink body, byte[] memory)
    {
        BinaryPrimitives.WriteUInt32LittleEndian(body.Room(NameBytes), Crc32.HashToUInt32(memory));
        body.Advance(NameBytes);
    }

    private static bool IsNamed(byte[] body, int at, byte[]? memory)
    {
        if (body.Length < at + NameBytes)
        {
            throw new InvalidDataException("A lean frame ends before it says what it builds on.");
        }

        return memory is not null && Crc32.HashToUInt32(memory) == BinaryPrimitives.ReadUInt32LittleEndian(body.AsSpan(at));
    }

    private sealed record LeanText(RecordOrigin Origin, IReadOnlyList<CommandAt> Commands);
}
