using System.Text.Json;
using PileController.Serving;

namespace PileController.Watch;

/// <summary>Keeps the count of starts in the data folder. What cannot be read counts as nothing; what cannot be written stops nothing.</summary>
internal sealed class StartBook(string folder, Func<string> boot, Func<long> sinceBootMs)
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "starts.json";

    private const string BootIdFile = "/proc/sys/kernel/random/boot_id";
    private readonly string _path = Path.Combine(folder, FileName);
    private StartCount _count = StartCount.Empty;
    private bool _started;

    /// <summary>The book of a folder, on this machine's own clock since its start.</summary>
    public static StartBook Of(string folder) => new(
        folder, () => File.Exists(BootIdFile) ? File.ReadAllText(BootIdFile).Trim() : "unknown", () => Environment.TickCount64);

    /// <summary>Notes a start and tells how many of the last hour followed no orderly end.</summary>
    public int Started()
    {
        _started = true;
        _count = Read();
        Keep(_count.Started(boot(), sinceBootMs()));
        return _count.Restarts;
    }

    /// <summary>Notes an orderly end of what was noted as started; else the book may be another program's.</summary>
    public void Ended()
    {
        if (_started)
        {
            Keep(_count.Ended());
        }
    }

    /// <summary>Whether a start since the machine's own has not ended in order: what it switched may be on still.</summary>
    public bool LeftRunning() => Read() is { Running: true } count && count.Boot == boot();

    private StartCount Read()
    {
        try
        {
            return File.Exists(_path) ? JsonSerializer.Deserialize<StartCount>(File.ReadAllText(_path)) ?? StartCount.Empty : StartCount.Empty;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or JsonException)
        {
            return StartCount.Empty;
        }
    }

    private void Keep(StartCount count)
    {
        _count = count;
        try
        {
            DataFolder.Replace(_path, JsonSerializer.Serialize(count));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // A card that cannot be written is told by the record; heat must not hang on it.
        }
    }
}
