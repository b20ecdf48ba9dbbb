using System.Text;
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
    public IReadOnlyList<DecisionLine> All() => Parse(Json());

    /// <summary>The lines that are asked for, oldest first.</summary>
    /// <exception cref="InvalidDataException">They do not match their checksum.</exception>
    public IReadOnlyList<DecisionLine> Matching(DecisionAsk ask)
    {
        byte[] json = Json();
        return MayHold(json, ask) ? [.. Parse(json).Where(ask.Holds)] : [];
    }

    // Reading the lines as text takes most of the time; whether there is any need is told by their bytes.
    private static bool MayHold(byte[] json, DecisionAsk ask) =>
        Holds(json, (ask.Mode, ask.Curb) switch
        {
            ({ } mode, { } curb) => $"\"mode\":{(int)mode},\"curb\":{(int)curb},",
            ({ } mode, null) => $"\"mode\":{(int)mode},",
            (null, { } curb) => $"\"curb\":{(int)curb},",
            _ => "",
        })
        && (ask.Text is not { } text || !IsPlain(text) || Encoding.UTF8.GetString(json).Contains(text, StringComparison.OrdinalIgnoreCase));

    private static bool Holds(byte[] json, string text) => json.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;

    // What JSON writes as it is.
    private static bool IsPlain(string text) => text.All(letter => letter is >= ' ' and <= '~' and not '"' and not '\\');

    private static List<DecisionLine> Parse(byte[] json) => JsonSerializer.Deserialize<List<DecisionLine>>(json, RecordJson.Options) ?? [];

    private byte[] Json() => Section.Read(ByteSink.Unseal(Bytes, "A block of decision lines"));
}
