using System.Text.Json;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// The list of closed files: a start compares their lengths and numbers with it and opens none of them. A file that is
/// not on the list is opened and read. The list is written aside, synced and renamed.
/// </summary>
/// <threadsafety>One thread at a time.</threadsafety>
internal sealed class Manifest
{
    public const string FileName = "manifest";
    private const string NewName = "manifest.new";
    private readonly IRecordDisk _disk;
    private readonly SortedDictionary<string, ClosedFile> _files = new(StringComparer.Ordinal);

    private Manifest(IRecordDisk disk, IEnumerable<ClosedFile> files)
    {
        _disk = disk;
        foreach (ClosedFile file in files)
        {
            _files[file.Name] = file;
        }
    }

    /// <summary>The closed files, by name.</summary>
    public IReadOnlyCollection<ClosedFile> Files => _files.Values;

    /// <summary>A list with nothing on it.</summary>
    public static Manifest Empty(IRecordDisk disk) => new(disk, []);

    /// <summary>Reads the list; an empty one when there is none.</summary>
    /// <exception cref="InvalidDataException">It does not match its checksum.</exception>
    /// <exception cref="JsonException">It cannot be understood.</exception>
    public static Manifest Open(IRecordDisk disk)
    {
        if (!disk.Names().Contains(FileName))
        {
            return Empty(disk);
        }

        using Stream stream = disk.Open(FileName);
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new Manifest(disk, JsonSerializer.Deserialize<List<ClosedFile>>(
            ByteSink.Unseal(bytes, "The list of closed files"), RecordJson.Options) ?? []);
    }

    /// <summary>The entry of a file, or null when it is not closed.</summary>
    public ClosedFile? Find(string name) => _files.GetValueOrDefault(name);

    /// <summary>Adds a file; safe when this returns.</summary>
    public void Add(ClosedFile file)
    {
        Save([.. _files.Values.Where(other => other.Name != file.Name), file]);
        _files[file.Name] = file;
    }

    /// <summary>Takes a file off; safe when this returns.</summary>
    public void Remove(string name)
    {
        if (_files.ContainsKey(name))
        {
            Save([.. _files.Values.Where(other => other.Name != name)]);
            _files.Remove(name);
        }
    }

    private void Save(List<ClosedFile> files)
    {
        ByteSink sink = new();
        sink.Bytes(JsonSerializer.SerializeToUtf8Bytes(files, RecordJson.Options));
        using (Stream fresh = _disk.Open(NewName))
        {
            fresh.SetLength(0);
            fresh.Write(sink.Seal());
            fresh.Flush();
        }

        _disk.Rename(NewName, FileName);
    }
}
