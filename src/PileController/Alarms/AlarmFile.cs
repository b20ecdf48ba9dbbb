using System.Text.Json;
using System.Text.Json.Serialization;
using PileController.Serving;

namespace PileController.Alarms;

/// <summary>Keeps the alarms in a file, by key, so that a row that is added or taken away upsets nothing.</summary>
/// <param name="path">The file.</param>
internal sealed class AlarmFile(string path)
{
    private const int Version = 1;
    private const string SetAside = ".damaged";

    private static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    };

    /// <summary>The alarms as they were kept; fresh ones where there is no file. A file that cannot be read is set aside, not written over.</summary>
    /// <param name="table">The rows.</param>
    /// <param name="trouble">What was set aside, in a sentence, or null.</param>
    /// <exception cref="IOException">The file is there and cannot be opened.</exception>
    public AlarmState Load(AlarmTable table, out string? trouble)
    {
        trouble = null;
        if (!File.Exists(path))
        {
            return AlarmState.Fresh(table);
        }

        try
        {
            Text kept = JsonSerializer.Deserialize<Text>(File.ReadAllText(path), Form) ?? throw new JsonException("It is empty.");
            return kept.Version == Version
                ? Of(table, kept)
                : throw new JsonException($"It is of version {kept.Version}; version {Version} can be read.");
        }
        catch (JsonException fault)
        {
            File.Move(path, path + SetAside, overwrite: true);
            trouble = $"{path} cannot be read and was set aside as {Path.GetFileName(path)}{SetAside}: {fault.Message}";
            return AlarmState.Fresh(table);
        }
    }

    /// <summary>Writes the file anew: a cut leaves the old one or the new one.</summary>
    /// <exception cref="IOException">It cannot be written; the old one is as it was.</exception>
    public void Save(AlarmTable table, AlarmState state)
    {
        Dictionary<string, AlarmMemory> rows = [];
        for (int i = 0; i < table.Rows.Count; i++)
        {
            if (state.Rows[i] != AlarmMemory.Fresh)
            {
                rows[table.Rows[i].Key] = state.Rows[i];
            }
        }

        Text kept = new(Version, state.Seconds, state.Number, rows, state.Recent);
        DataFolder.Replace(path, JsonSerializer.Serialize(kept, Form));
    }

    // A hand-made or torn file may say anything that is JSON: no time lies ahead of the board's but a shelving's, and that
    // within its bounds.
    private static AlarmState Of(AlarmTable table, Text kept)
    {
        double seconds = Math.Max(0, kept.Seconds);
        return new AlarmState
        {
            Seconds = seconds,
            Number = Math.Max(0, kept.Number),
            Rows = [.. table.Rows.Select(row => kept.Rows.TryGetValue(row.Key, out AlarmMemory? memory) && memory is not null ? Bound(row, memory, seconds) : AlarmMemory.Fresh)],
            Recent = [.. kept.Recent.Where(one => one is { Key: not null }).TakeLast(AlarmState.MostRecent)],
        };
    }

    private static AlarmMemory Bound(AlarmRow row, AlarmMemory memory, double seconds) => memory with
    {
        BeganSeconds = Math.Min(memory.BeganSeconds, seconds),
        LastSeconds = Math.Min(memory.LastSeconds, seconds),
        ToldSeconds = Math.Min(memory.ToldSeconds, seconds),
        ShelvedUntilSeconds = memory.ShelvedUntilSeconds > 0 ? Math.Min(memory.ShelvedUntilSeconds, seconds + row.MostShelvedSeconds) : 0,
    };

    private sealed record Text(int Version, double Seconds, long Number, Dictionary<string, AlarmMemory> Rows, IReadOnlyList<AlarmEvent> Recent)
    {
        public Dictionary<string, AlarmMemory> Rows { get; } = Rows ?? [];

        public IReadOnlyList<AlarmEvent> Recent { get; } = Recent ?? [];
    }
}
