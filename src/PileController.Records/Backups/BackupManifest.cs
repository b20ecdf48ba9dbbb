using System.IO.Hashing;
using System.Text;
using System.Text.Json;

namespace PileController.Records.Backups;

/// <summary>What a backup holds, in a sealed file of its own beside the rest.</summary>
/// <param name="Made">When, UTC.</param>
/// <param name="Ticks">Ticks in it.</param>
/// <param name="LastSequence">Its last tick.</param>
/// <param name="Files">Its files.</param>
/// <param name="Seal">CRC-32 of all the above.</param>
internal sealed record BackupManifest(
    DateTimeOffset Made, long Ticks, long LastSequence, IReadOnlyList<BackupFile> Files, string Seal)
{
    /// <summary>Name of its file.</summary>
    public const string Name = "backup.json";

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Whether a folder has one.</summary>
    public static bool IsIn(string folder) => File.Exists(Path.Combine(folder, Name));

    /// <summary>Writes it and waits until it is safe.</summary>
    public void Write(string folder)
    {
        using FileStream stream = new(Path.Combine(folder, Name), FileMode.CreateNew, FileAccess.Write);
        stream.Write(JsonSerializer.SerializeToUtf8Bytes(this with { Seal = Sealed() }, Options));
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Reads the manifest of a backup.</summary>
    /// <exception cref="InvalidDataException">It is damaged.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static BackupManifest Read(string folder)
    {
        BackupManifest? manifest;
        try
        {
            manifest = JsonSerializer.Deserialize<BackupManifest>(File.ReadAllBytes(Path.Combine(folder, Name)), Options);
        }
        catch (JsonException exception)
        {
            throw new InvalidDataException($"'{Name}' cannot be read: {exception.Message}", exception);
        }

        if (manifest?.Files is null || manifest.Files.Any(file => file?.Name is null) || manifest.Seal != manifest.Sealed())
        {
            throw new InvalidDataException($"'{Name}' does not match its checksum.");
        }

        return manifest;
    }

    /// <summary>What of a folder is not as this says, a sentence each.</summary>
    public IEnumerable<string> Problems(string folder)
    {
        IReadOnlyList<string> there = RecordFiles.In(folder);
        foreach (BackupFile file in Files)
        {
            if (!there.Contains(file.Name))
            {
                yield return $"'{file.Name}' is missing.";
                continue;
            }

            (long bytes, string crc) = FileCopy.Measure(Path.Combine(folder, file.Name));
            if (bytes != file.Bytes)
            {
                yield return $"'{file.Name}' is {bytes} bytes long; it was {file.Bytes}.";
            }
            else if (crc != file.Crc32)
            {
                yield return $"'{file.Name}' does not match its checksum.";
            }
        }

        foreach (string stray in there.Except(Files.Select(file => file.Name)))
        {
            yield return $"'{stray}' was not put there by the backup.";
        }
    }

    private string Sealed() => Crc32.HashToUInt32(
        Encoding.UTF8.GetBytes(JsonSerializer.Serialize(this with { Seal = "" }, Options))).ToString("x8");
}
