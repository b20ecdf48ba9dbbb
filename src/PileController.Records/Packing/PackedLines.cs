using System.Text;
using System.Text.Json;

namespace PileController.Records.Packing;

/// <summary>The lines of one batch's decisions: JSON, compressed, sealed.</summary>
internal sealed class PackedLines(byte[] bytes)
{
    // The names of a line's texts in its JSON.
    private static readonly string[] TextNames =
        [JsonNamingPolicy.CamelCase.ConvertName(nameof(DecisionLine.Why)), JsonNamingPolicy.CamelCase.ConvertName(nameof(DecisionLine.Note))];

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

    /// <summary>The sentences and notes of the lines, each once, one behind the other: what a text is looked for in.</summary>
    /// <exception cref="InvalidDataException">They do not match their checksum.</exception>
    /// <exception cref="JsonException">They cannot be understood.</exception>
    public string Texts()
    {
        HashSet<string> texts = [];
        Utf8JsonReader reader = new(Json());
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.PropertyName && IsTextName(ref reader))
            {
                reader.Read();
                if (reader.GetString() is { } text)
                {
                    texts.Add(text);
                }
            }
        }

        return string.Join('\n', texts);
    }

    private static bool IsTextName(ref Utf8JsonReader reader) => reader.ValueTextEquals(TextNames[0]) || reader.ValueTextEquals(TextNames[1]);

    // Reading the lines as text takes most of the time; whether there is any need is told by their bytes.
    private static bool MayHold(byte[] json, DecisionAsk ask) =>
        Holds(json, (ask.Mode, ask.Curb) switch
        {
            ({ } mode, { } curb) => $"\"mode\":{(int)mode},\"curb\":{(int)curb},",
            ({ } mode, null) => $"\"mode\":{(int)mode},",
            (null, { } curb) => $"\"curb\":{(int)curb},",
            _ => "",
        });

    private static bool Holds(byte[] json, string text) => json.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;

    private static List<DecisionLine> Parse(byte[] json) => JsonSerializer.Deserialize<List<DecisionLine>>(json, RecordJson.Options) ?? [];

    private byte[] Json() => Section.Read(ByteSink.Unseal(Bytes, "A block of decision lines"));
}
