using LiteDB;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// One file of the store: entries in the order of their numbers, each a document in every collection whose id is the
/// number of its first tick. No secondary index, no mapped types.
/// </summary>
/// <threadsafety>One thread only. After an error the file is closed and opened again at the next use: LiteDB answers
/// every later call with the first error.</threadsafety>
internal sealed class RecordFile : IDisposable
{
    private readonly IRecordDisk _disk;
    private readonly FileKind _kind;
    private readonly FileHeads _heads;
    private readonly FileSpan? _noted;
    private ClosedFile? _closed;
    private StoreEngine? _engine;
    private bool _afterError;

    private RecordFile(IRecordDisk disk, FileKind kind, string name, ClosedFile? closed, FileSpan? noted)
    {
        _disk = disk;
        _kind = kind;
        _heads = new FileHeads(name, kind.Collections[0]);
        _noted = noted;
        _closed = closed;
        Name = name;
    }

    /// <summary>Plain name of the file.</summary>
    public string Name { get; }

    /// <summary>The heads of its entries, in order. The file is read whole for them once.</summary>
    /// <exception cref="LiteException">The file is broken.</exception>
    /// <exception cref="InvalidDataException">The file is broken.</exception>
    public IReadOnlyList<BatchHead> Heads => HeadsAfter(0);

    /// <summary>What it holds; needs no opening.</summary>
    public FileSpan Span => _closed?.Span ?? _heads.Span;

    /// <summary>Last tick it holds, or 0.</summary>
    public long LastSequence => Span.LastSequence;

    /// <summary>Whether it will not be written again.</summary>
    public bool IsClosed => _closed is not null;

    /// <summary>Whether an engine has it open.</summary>
    public bool IsOpen => _engine is not null;

    /// <summary>Why it could not be read when that was last tried, or null.</summary>
    public string? Unreadable { get; private set; }

    /// <summary>Makes an empty file. It gets its name only when it is whole.</summary>
    public static RecordFile Create(IRecordDisk disk, FileKind kind, long firstSequence)
    {
        string name = kind.NameOf(firstSequence);
        EmptyFile.Make(disk, kind, name);
        return Open(disk, kind, name);
    }

    /// <summary>Opens a file that may be written again.</summary>
    /// <param name="disk">Where.</param>
    /// <param name="kind">Of which kind.</param>
    /// <param name="name">Its plain name.</param>
    /// <param name="noted">What it once held for certain: only what came after is read. Null when nobody knows.</param>
    /// <exception cref="LiteException">The file is broken.</exception>
    /// <exception cref="InvalidDataException">The file is broken.</exception>
    public static RecordFile Open(IRecordDisk disk, FileKind kind, string name, FileSpan? noted = null)
    {
        RecordFile file = new(disk, kind, name, null, noted);
        file.Use(_ => { });
        return file;
    }

    /// <summary>A closed file, which is opened when something is asked of it.</summary>
    /// <exception cref="InvalidDataException">Its length is not what it was.</exception>
    public static RecordFile OfClosed(IRecordDisk disk, FileKind kind, ClosedFile closed)
    {
        closed.CheckLength(disk);
        return new RecordFile(disk, kind, closed.Name, closed, null);
    }

    /// <summary>The heads of the entries with a tick after a number, in order. Older ones are not read for that.</summary>
    /// <exception cref="LiteException">The file is broken.</exception>
    /// <exception cref="InvalidDataException">The file is broken.</exception>
    public IReadOnlyList<BatchHead> HeadsAfter(long sequence)
    {
        if (!_heads.AreKnownAfter(sequence))
        {
            Use(engine => Know(engine, sequence));
        }

        return _heads.After(sequence);
    }

    /// <summary>What the decision lines of an entry, one of those whose heads were asked for, are marked with.</summary>
    public LineMarks MarksOf(long firstSequence) => _heads.MarksOf(firstSequence);

    /// <summary>Opens the file when it is not open, or an error has closed it, and has read all its heads once.</summary>
    public void Reach() => Use(engine => Know(engine, 0));

    /// <summary>Adds entries in one transaction, which is safe when this returns.</summary>
    public void Write(IReadOnlyList<FileEntry> entries) => Use(engine =>
    {
        LiteDatabase database = engine.Database;
        database.BeginTrans();
        for (int part = 0; part < _kind.Collections.Count; part++)
        {
            ILiteCollection<BsonDocument> collection = database.GetCollection(_kind.Collections[part]);
            foreach (FileEntry entry in entries)
            {
                if (entry.Parts[part] is { } bytes)
                {
                    collection.Insert(part == 0 ? EntryDocument.Of(entry, bytes) : EntryDocument.Of(entry.Head.FirstSequence, bytes));
                }
            }
        }

        database.Commit();
        foreach (FileEntry entry in entries)
        {
            _heads.Add(entry.Head, entry.Marks);
        }

        engine.Checkpoint(force: false);
    });

    /// <summary>Works the log into the data file.</summary>
    public void Checkpoint() => Use(engine => engine.Checkpoint(force: true));

    /// <summary>Ends writing for ever. The file counts as closed once that is noted.</summary>
    /// <param name="note">Notes it; what it throws leaves the file as it was.</param>
    public void Close(Action<ClosedFile> note)
    {
        Checkpoint();
        Rest();
        _disk.Delete(StoreEngine.LogNameOf(Name));
        ClosedFile closed = ClosedFile.Of(_disk, Name, Span);
        note(closed);
        _closed = closed;
    }

    /// <summary>Compares a closed file with its checksum.</summary>
    /// <exception cref="InvalidDataException">It does not fit.</exception>
    public void CheckSum() => _closed?.CheckSum(_disk);

    /// <summary>Reads the bytes filed under a number in one collection of the kind, or null when there are none.</summary>
    public byte[]? Part(int part, long id) =>
        Use(engine => engine.Database.GetCollection(_kind.Collections[part]).FindById(id)?["p"].AsBinary);

    /// <summary>The numbers under which something is filed in one collection of the kind.</summary>
    public IReadOnlyList<long> Ids(int part) => Use(engine => (IReadOnlyList<long>)
        [.. engine.Database.GetCollection(_kind.Collections[part]).Query().Select("{_id}").ToEnumerable().Select(d => d["_id"].AsInt64)]);

    /// <summary>Lets go of the open file until it is used again. Its heads stay known.</summary>
    /// <remarks>What goes wrong while closing a file that has already failed adds nothing to the first error.</remarks>
    public void Rest()
    {
        StoreEngine? engine = _engine;
        _engine = null;
        try
        {
            engine?.Dispose();
        }
        catch (Exception exception) when (exception is IOException or LiteException or InvalidOperationException)
        {
            return;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Rest();

    private void Use(Action<StoreEngine> work) => Use(engine =>
    {
        work(engine);
        return 0;
    });

    private T Use<T>(Func<StoreEngine, T> work)
    {
        try
        {
            return work(_engine ?? Opened());
        }
        catch
        {
            _afterError = true;
            Rest();
            throw;
        }
    }

    private StoreEngine Opened()
    {
        Reading(() =>
        {
            _engine = new StoreEngine(_disk, Name, IsClosed, _afterError);

            // What was written since is known here, unless a write failed.
            bool isUnsure = _afterError && !IsClosed;
            if (isUnsure || !(_heads.IsSpanKnown || (_noted is { } noted && _heads.TryGoOn(_engine.Database, noted))))
            {
                _heads.ReadAll(_engine.Database, _closed?.Span);
            }
        });
        _afterError = false;
        Unreadable = null;
        return _engine!;
    }

    private void Know(StoreEngine engine, long afterSequence)
    {
        if (!_heads.AreKnownAfter(afterSequence))
        {
            Reading(() => _heads.ReadAfter(engine.Database, afterSequence));
        }
    }

    private void Reading(Action work)
    {
        try
        {
            work();
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception))
        {
            Unreadable = exception.Message;
            throw;
        }
    }
}
