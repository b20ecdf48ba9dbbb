using System.Text.Json;
using PileController.Settings.Fields;
using PileController.Settings.Json;

namespace PileController.Settings;

/// <summary>
/// Reads a small file that describes one part, a pump, a loop, a recipe, in the same way as the settings: one JSON
/// document, comments and trailing commas allowed, every quantity with its unit, every fault listed at once.
/// </summary>
internal static class PartFile
{
    /// <summary>Reads a text over a blank part.</summary>
    /// <param name="text">The JSON text.</param>
    /// <param name="table">The keys it may have.</param>
    /// <param name="blank">What the part is before a key is read.</param>
    /// <returns>The part, to be used only without faults, and the reading with its faults.</returns>
    public static (T Part, FileReading Reading) Parse<T>(string text, FieldTable<T> table, T blank)
    {
        FileReading reading = new();
        return Root(text, reading) is { } root ? (table.Read(blank, root, "", reading), reading) : (blank, reading);
    }

    /// <summary>A file that says the same, with a comment over every key: what it means and what is allowed.</summary>
    /// <param name="title">What the file describes, a sentence.</param>
    /// <param name="table">The keys it may have.</param>
    /// <param name="part">What to write.</param>
    public static string Explain<T>(string title, FieldTable<T> table, T part)
    {
        ExplainedText text = new();
        text.Open(title, null, '{');
        foreach (Field<T> field in table)
        {
            field.Explain(text, part);
        }

        text.Close('}');
        return text.ToString();
    }

    /// <summary>The document of a text, or null with a fault when it is none.</summary>
    public static JsonEntry? Root(string text, FileReading reading)
    {
        if (string.IsNullOrWhiteSpace(text.TrimStart('\ufeff')))
        {
            reading.Faults.Add(new SettingsFault("", "the file is empty", "one JSON document", 1));
            return null;
        }

        try
        {
            return JsonEntryReader.Read(text);
        }
        catch (JsonException malformed)
        {
            reading.Faults.Add(Malformed(malformed));
            return null;
        }
    }

    private static SettingsFault Malformed(JsonException e)
    {
        long line = (e.LineNumber ?? 0) + 1;
        long column = (e.BytePositionInLine ?? 0) + 1;
        string reason = e.Message.Split(" LineNumber:")[0].Split(", when isFinalBlock")[0].TrimEnd('.', ' ');
        return new SettingsFault("", $"not readable as JSON at line {line}, column {column}: {reason}", "one JSON document", (int)line);
    }
}
