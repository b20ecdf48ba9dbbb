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

    /// <summary>Notes an end of what was noted as started; else the book may be another program's.</summary>
    /// <param name="leftOn">What could not be switched off, a sentence each; the end was in order where there is nothing.</param>
    public void Ended(IReadOnlyList<string> leftOn)
    {
        if (_started)
        {
            Keep(_count.Ended(leftOn));
        }
    }

    /// <summary>What the last end could not switch off, a sentence each; nothing once a start has put all off.</summary>
    public IReadOnlyList<string> LeftOn() => Read().LeftOn;

    /// <summary>Whether a start since the machine's own has not ended in order: what it switched may be on still.</summary>
    public bool LeftRunning() => Read() is { Running: true } count && count.Boot == boot();

    private StartCount Read()
    {
        try
        {
            return File.Exists(_path) && JsonSerializer.Deserialize<StartCount>(File.ReadAllText(_path)) is { Boot: not null, StartsMs: not null, LeftOn: not null } count
                ? count
                : StartCount.Empty;
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
