using LiteDB;
using PileController.Records.Keeping;

namespace PileController.Records.Storage;

/// <summary>All files of one kind, oldest first. A file that cannot be opened is set aside and named.</summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class RecordShelf : IDisposable
{
    private readonly IRecordDisk _disk;
    private readonly FileKind _kind;
    private readonly int _fileTicks;
    private readonly Manifest _manifest;
    private readonly List<RecordFile> _files = [];

    private RecordShelf(IRecordDisk disk, FileKind kind, int fileTicks, Manifest manifest)
    {
        _disk = disk;
        _kind = kind;
        _fileTicks = fileTicks;
        _manifest = manifest;
    }

    /// <summary>The files.</summary>
    public IReadOnlyList<RecordFile> Files => _files;

    /// <summary>Files that could not be opened or are gone, each with the reason.</summary>
    public List<BrokenFile> Broken { get; } = [];

    /// <summary>First tick on the shelf, or 0.</summary>
    public long FirstSequence => _files.Count == 0 ? 0 : _files[0].Span.FirstSequence;

    /// <summary>Last tick on the shelf, or 0.</summary>
    public long LastSequence => _files.Count == 0 ? 0 : _files.Max(file => file.LastSequence);

    /// <summary>What the files that are still written hold for certain.</summary>
    public IEnumerable<OpenFile> OpenFiles =>
        _files.Where(file => !file.IsClosed && file.Span.Ticks > 0).Select(file => new OpenFile(file.Name, file.Span));

    /// <summary>Finds all files.</summary>
    /// <param name="disk">Where.</param>
    /// <param name="kind">Of which kind.</param>
    /// <param name="fileTicks">Ticks after which a new file is begun.</param>
    /// <param name="manifest">The closed ones.</param>
    /// <param name="noted">What others once held for certain.</param>
    /// <param name="setAside">Whether a broken one is moved to quarantine.</param>
    public static RecordShelf Open(
        IRecordDisk disk, FileKind kind, int fileTicks, Manifest manifest, IReadOnlyList<OpenFile> noted, bool setAside)
    {
        RecordShelf shelf = new(disk, kind, fileTicks, manifest);
        IReadOnlyList<string> names = [.. disk.Names().Where(kind.Holds)];
        foreach (string name in names)
        {
            shelf.Add(name, noted, setAside);
        }

        foreach (ClosedFile gone in manifest.Files.Where(file => kind.Holds(file.Name) && !names.Contains(file.Name)).ToList())
        {
            shelf.Broken.Add(new BrokenFile(gone.Name, "it is gone", IsGone: true));
            if (setAside)
            {
                manifest.Remove(gone.Name);
            }
        }

        return shelf;
    }

    /// <summary>Adds entries to the newest file, or to a new one when that is full. They are safe when this returns.</summary>
    public void Write(IReadOnlyList<FileEntry> entries)
    {
        bool isFull = _files.Count == 0 || _files[^1].IsClosed || _files[^1].Span.Ticks >= _fileTicks;
        foreach (RecordFile file in _files.Take(isFull ? _files.Count : _files.Count - 1).Where(file => !file.IsClosed))
        {
            file.Close(_manifest.Add);
        }

        if (isFull)
        {
            _files.Add(RecordFile.Create(_disk, _kind, entries[0].Head.FirstSequence));
        }

        _files[^1].Write(entries);
    }

    /// <summary>
    /// Deletes the oldest closed files as long as those after them hold enough ticks. What counts is recorded ticks:
    /// no clock can make a file old.
    /// </summary>
    /// <param name="keepTicks">So many ticks stay at least.</param>
    /// <param name="upTo">No file that holds a tick after this one is deleted.</param>
    public void Drop(long keepTicks, long upTo)
    {
        while (_files.Count > 1 && _files[0].IsClosed && _files[0].LastSequence <= upTo
            && _files.Skip(1).Sum(file => file.Span.Ticks) >= keepTicks)
        {
            RecordFile oldest = _files[0];

            // Off the list first: a file that is there and not on the list is found again, the other way round is a loss.
            _manifest.Remove(oldest.Name);
            oldest.Dispose();
            _files.RemoveAt(0);
            _disk.Delete(oldest.Name);
            _disk.Delete(StoreEngine.LogNameOf(oldest.Name));
        }
    }

    /// <summary>
    /// Opens the files that are still written again after an error, and sets aside each file that proves broken, or has
    /// when something was asked of it. A new one will be begun. Nothing is added to a file that has not been read since
    /// the start, so that what is new does not share the lot of what was damaged before.
    /// </summary>
    public void Recover(Faults faults)
    {
        foreach (RecordFile file in _files.Where(file => !file.IsClosed).ToList())
        {
            try
            {
                file.Reach();
            }
            catch (Exception exception) when (IsDamage(exception))
            {
                SetAside(file, exception.Message, faults);
            }
        }

        foreach (RecordFile file in _files.Where(file => file.Unreadable is not null).ToList())
        {
            SetAside(file, file.Unreadable!, faults);
        }
    }

    /// <summary>Works all logs into their data files.</summary>
    public void Checkpoint()
    {
        foreach (RecordFile file in _files.Where(file => !file.IsClosed))
        {
            file.Checkpoint();
        }
    }

    /// <summary>Lets go of closed files that a question has opened.</summary>
    public void Rest()
    {
        foreach (RecordFile file in _files.Where(file => file.IsClosed))
        {
            file.Rest();
        }
    }

    /// <summary>Lets go of every file until it is used again: an engine keeps the pages it has met for as long as it is open.</summary>
    public void LetGo()
    {
        foreach (RecordFile file in _files)
        {
            file.Rest();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => LetGo();

    /// <summary>
    /// Whether an error is one that a broken file makes. LiteDB takes bytes as they are: a type it does not know is not
    /// implemented to it.
    /// </summary>
    public static bool IsDamage(Exception exception) =>
        exception is LiteException or InvalidDataException or InvalidCastException or InvalidOperationException
            or ArgumentException or IndexOutOfRangeException or NullReferenceException or ArithmeticException
            or FormatException or NotSupportedException or NotImplementedException or KeyNotFoundException;

    private void Add(string name, IReadOnlyList<OpenFile> noted, bool setAside)
    {
        try
        {
            RecordFile file = _manifest.Find(name) is { } closed
                ? RecordFile.OfClosed(_disk, _kind, closed)
                : RecordFile.Open(_disk, _kind, name, noted.FirstOrDefault(file => file.Name == name)?.Span);
            if (file.Span.Ticks > 0 && file.Span.FirstSequence <= LastSequence)
            {
                file.Dispose();
                throw new InvalidDataException($"it begins at tick {file.Span.FirstSequence}; the files before it end at tick {LastSequence}");
            }

            _files.Add(file);
        }
        // At the start little else is in the memory: what does not fit in is a length that is none. Later it may be anything.
        catch (Exception exception) when (IsDamage(exception) || exception is OutOfMemoryException)
        {
            Broken.Add(new BrokenFile(name, exception.Message));
            if (setAside)
            {
                _manifest.Remove(name);
                Quarantine(name);
            }
        }
    }

    private void SetAside(RecordFile file, string reason, Faults faults)
    {
        file.Dispose();
        _files.Remove(file);
        _manifest.Remove(file.Name);
        Quarantine(file.Name);
        faults.Stand($"A file was broken and was set aside: {file.Name}: {reason}.");
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
