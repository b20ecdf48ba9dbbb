using PileController.Settings.Checks;
using PileController.Settings.Fields;
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
        FileReading reading = new();
        if (PartFile.Root(text, reading) is not { } root)
        {
            return new SettingsResult(PileSettings.AlderBank, reading.Faults);
        }

        PileSettings settings = PileFields.Table.Read(PileSettings.AlderBank, root, "", reading);
        settings = settings with { Control = Derived.Of(settings) };
        SettingsResult result = new(settings, [.. reading.Faults, .. CrossChecks.Run(settings, reading)]);
        return result.Faults.Count > 0 ? result : result with { Warnings = [.. Warnings.Of(settings, reading)] };
    }

    /// <summary>A settings file that says the same, with a comment over every key: what it means and what is allowed.</summary>
    /// <param name="settings">The settings to write.</param>
    public static string Explain(PileSettings settings) => SettingsWriter.Explain(settings);
}
