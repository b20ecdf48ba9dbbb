using System.Text.Json;

namespace PileController.Records.Packing;

/// <summary>The lines of one batch's decisions: JSON, compressed, sealed.</summary>
internal sealed class PackedLines(byte[] bytes)
{
    /// <summary>The sealed bytes.</summary>
    public byte[] Bytes { get; } = bytes;

    /// <summary>Packs lines.</summary>
    public static PackedLines Of(IReadOnlyList<DecisionLine> lines)
    {
        ByteSink sink = new();
        Section.Write(sink, JsonSerializer.SerializeToUtf8Bytes(lines, RecordJson.Options));
        return new PackedLines(sink.Seal());
    }

    /// <summary>All lines, oldest first.</summary>
    /// <exception cref="InvalidDataException">They do not match their checksum.</exception>
    public IReadOnlyList<DecisionLine> All()
    {
        byte[] json = Section.Read(ByteSink.Unseal(Bytes, "A block of decision lines"));
        return JsonSerializer.Deserialize<List<DecisionLine>>(json, RecordJson.Options) ?? [];
    }
}
