using System.Text;
using System.Text.Json;

namespace PileController.Settings.Json;

/// <summary>
/// Reads a JSON text into entries that know their lines. The stock document model keeps neither lines nor, reliably,
/// keys that are given twice, and both are needed to tell a person what is wrong.
/// </summary>
internal static class JsonEntryReader
{
    private static readonly JsonReaderOptions Lenient =
        new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    /// <summary>Reads a whole text.</summary>
    /// <exception cref="JsonException">It is not JSON; the exception knows line and column, from 0.</exception>
    public static JsonEntry Read(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text.TrimStart('\ufeff'));
        Utf8JsonReader reader = new(bytes, Lenient);
        LineCounter lines = new(bytes);
        reader.Read();
        JsonEntry root = ReadValue(ref reader, lines);

        // Reads on to the end so that a stray bracket after the document is seen.
        while (reader.Read())
        {
        }

        return root;
    }

    /// <summary>The text of a string or key.</summary>
    private static string TextOf(ref Utf8JsonReader reader, LineCounter lines)
    {
        try
        {
            return reader.GetString()!;
        }
        catch (InvalidOperationException halfLetter)
        {
            int line = lines.LineAt(reader.TokenStartIndex);
            throw new JsonException(
                "A text with half of a two-part \\u letter.", null, line - 1, lines.ColumnAt(reader.TokenStartIndex) - 1, halfLetter);
        }
    }

    private static JsonEntry ReadValue(ref Utf8JsonReader reader, LineCounter lines)
    {
        int line = lines.LineAt(reader.TokenStartIndex);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                return new(JsonValueKind.Object, line, "a section", "", ReadMembers(ref reader, lines), []);
            case JsonTokenType.StartArray:
                return new(JsonValueKind.Array, line, "a list", "", [], ReadItems(ref reader, lines));
            case JsonTokenType.String:
                string text = TextOf(ref reader, lines);
                return new(JsonValueKind.String, line, $"\"{text}\"", text, [], []);
            case JsonTokenType.Number:
                string digits = Encoding.UTF8.GetString(reader.ValueSpan);
                return new(JsonValueKind.Number, line, digits, digits, [], []);
            case JsonTokenType.True:
                return new(JsonValueKind.True, line, "true", "", [], []);
            case JsonTokenType.False:
                return new(JsonValueKind.False, line, "false", "", [], []);
            default:
                return new(JsonValueKind.Null, line, "null", "", [], []);
        }
    }

    private static List<JsonMember> ReadMembers(ref Utf8JsonReader reader, LineCounter lines)
    {
        List<JsonMember> members = [];
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            string key = TextOf(ref reader, lines);
            int line = lines.LineAt(reader.TokenStartIndex);
            reader.Read();
            members.Add(new(key, line, ReadValue(ref reader, lines)));
        }

        return members;
    }

    private static List<JsonEntry> ReadItems(ref Utf8JsonReader reader, LineCounter lines)
    {
        List<JsonEntry> items = [];
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            items.Add(ReadValue(ref reader, lines));
        }

        return items;
    }
}
