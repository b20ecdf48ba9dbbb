using System.Text.Json;
using PileController.Settings.Checks;
using PileController.Settings.Fields;
using PileController.Settings.Json;
using PileController.Settings.Tables;

namespace PileController.Settings;

/// <summary>Reads and writes settings files: one JSON document, comments and trailing commas allowed.</summary>
public static class SettingsFile
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <exception cref="IOException">It cannot be read; likewise <see cref="UnauthorizedAccessException"/>.</exception>
    public static SettingsResult Load(string path) => Parse(File.ReadAllText(path));

    /// <summary>Reads a text. Keys left out take Alder Bank's values; every fault is listed, none is thrown.</summary>
    /// <param name="text">The JSON text.</param>
    public static SettingsResult Parse(string text)
    {
        if (string.IsNullOrWhiteSpace(text.TrimStart('\ufeff')))
        {
            return new SettingsResult(PileSettings.AlderBank, [new SettingsFault("", "the file is empty", "one JSON document", 1)]);
        }

        JsonEntry root;
        try
        {
            root = JsonEntryReader.Read(text);
        }
        catch (JsonException malformed)
        {
            return new SettingsResult(PileSettings.AlderBank, [Malformed(malformed)]);
        }

        FileReading reading = new();
        PileSettings settings = PileFields.Table.Read(PileSettings.AlderBank, root, "", reading);
        settings = settings with { Control = settings.Control with { Places = ProbePlaces.Of(settings) } };
        return new SettingsResult(settings, [.. reading.Faults, .. CrossChecks.Run(settings, reading)]);
    }

    /// <summary>A settings file that says the same, with a comment over every key: what it means and what is allowed.</summary>
    /// <param name="settings">The settings to write.</param>
    public static string Explain(PileSettings settings) => SettingsWriter.Explain(settings);

    private static SettingsFault Malformed(JsonException e)
    {
        long line = (e.LineNumber ?? 0) + 1;
        long column = (e.BytePositionInLine ?? 0) + 1;
        string reason = e.Message.Split(" LineNumber:")[0].Split(", when isFinalBlock")[0].TrimEnd('.', ' ');
        return new SettingsFault("", $"not readable as JSON at line {line}, column {column}: {reason}", "one JSON document", (int)line);
    }
}
