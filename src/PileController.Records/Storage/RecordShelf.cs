using LiteDB;
using PileController.Records.Keeping;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>All files of the store, oldest first. A file that cannot be opened is set aside and named.</summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class RecordShelf : IDisposable
{
    private readonly IRecordDisk _disk;
    private readonly int _fileTicks;
    private readonly List<RecordFile> _files = [];

    private RecordShelf(IRecordDisk disk, int fileTicks)
    {
        _disk = disk;
        _fileTicks = fileTicks;
    }

    /// <summary>The files.</summary>
    public IReadOnlyList<RecordFile> Files => _files;

    /// <summary>Files that could not be opened, each with the reason.</summary>
    public List<string> Broken { get; } = [];

    /// <summary>Last tick on the shelf, or 0.</summary>
    public long LastSequence => _files.Count == 0 ? 0 : _files.Max(file => file.LastSequence);

    /// <summary>Opens all files. With <paramref name="setAside"/> a broken one is moved to quarantine.</summary>
    public static RecordShelf Open(IRecordDisk disk, int fileTicks, bool setAside)
    {
        RecordShelf shelf = new(disk, fileTicks);
        foreach (string name in disk.Names())
        {
            if (RecordFile.IsName(name))
            {
                shelf.Add(name, setAside);
            }
            else if (setAside && RecordFile.IsUnfinished(name))
            {
                disk.Delete(name);
            }
        }

        return shelf;
    }

    /// <summary>Adds blocks to the newest file, or to a new one when that is full. They are safe when this returns.</summary>
    public void Write(IReadOnlyList<PackedTicks> packs)
    {
        if (_files.Count == 0 || _files[^1].Ticks >= _fileTicks)
        {
            if (_files.Count > 0)
            {
                _files[^1].Checkpoint();
            }

            _files.Add(RecordFile.Create(_disk, packs[0].Batch.FirstSequence));
        }

        _files[^1].Write(packs);
    }

    /// <summary>Opens the newest file again after an error; when it proves broken it is set aside and a new one will be begun.</summary>
    public void Recover(Faults faults)
    {
        if (_files.Count == 0)
        {
            return;
        }

        RecordFile newest = _files[^1];
        try
        {
            newest.Reach();
        }
        catch (Exception exception) when (IsDamage(exception))
        {
            newest.Dispose();
            _files.Remove(newest);
            Quarantine(newest.Name);
            faults.Stand($"A file was broken and was set aside: {newest.Name}: {exception.Message}.");
        }
    }

    /// <summary>Works all logs into their data files.</summary>
    public void Checkpoint()
    {
        foreach (RecordFile file in _files)
        {
            file.Checkpoint();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (RecordFile file in _files)
        {
            file.Dispose();
        }
    }

    /// <summary>Whether an error is one that a broken file makes.</summary>
    public static bool IsDamage(Exception exception) =>
        exception is LiteException or InvalidDataException or InvalidCastException or InvalidOperationException
            or ArgumentException or IndexOutOfRangeException or NullReferenceException or OverflowException
            or FormatException or NotSupportedException or KeyNotFoundException;

    private void Add(string name, bool setAside)
    {
        try
        {
            _files.Add(RecordFile.Open(_disk, name));
        }
        catch (Exception exception) when (IsDamage(exception))
        {
            Broken.Add($"{name}: {exception.Message}");
            if (setAside)
            {
                Quarantine(name);
            }
        }
    }

    private void Quarantine(string name)
    {
        _disk.Quarantine(name);
        string log = StoreEngine.LogNameOf(name);
        if (_disk.Names().Contains(log))
        {
            _disk.Quarantine(log);
        }
    }
}
