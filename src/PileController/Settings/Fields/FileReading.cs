using PileController.Settings.Json;

namespace PileController.Settings.Fields;

/// <summary>What is gathered while a file is read: its faults, and where each path stands.</summary>
internal sealed class FileReading
{
    private readonly Dictionary<string, JsonEntry> _entries = [];

    public List<SettingsFault> Faults { get; } = [];

    public void Saw(string path, JsonEntry entry) => _entries[path] = entry;

    public void Fault(string path, JsonEntry entry, string allowed) =>
        Faults.Add(new SettingsFault(path, entry.Given, allowed, entry.Line));

    /// <summary>Line of a path, or null where it is not in the file.</summary>
    public int? LineOf(string path) => _entries.TryGetValue(path, out JsonEntry? entry) ? entry.Line : null;

    /// <summary>How the writer of the file gave a path, or null where it is not in the file.</summary>
    public string? GivenAt(string path) => _entries.TryGetValue(path, out JsonEntry? entry) ? entry.Given : null;
}
