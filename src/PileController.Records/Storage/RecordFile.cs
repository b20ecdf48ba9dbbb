using System.IO.Hashing;
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
    private readonly List<BatchHead> _heads = [];
    private readonly Dictionary<long, LineMarks> _marks = [];
    private ClosedFile? _closed;
    private FileSpan _span;
    private StoreEngine? _engine;
    private bool _afterError;
    private bool _headsRead;

    private RecordFile(IRecordDisk disk, FileKind kind, string name, ClosedFile? closed)
    {
        _disk = disk;
        _kind = kind;
        Name = name;
        _closed = closed;
    }

    /// <summary>Plain name of the file.</summary>
    public string Name { get; }

    /// <summary>The heads of its entries, in order. A closed file is opened for them once.</summary>
    /// <exception cref="LiteException">The file is broken.</exception>
    /// <exception cref="InvalidDataException">The file is broken.</exception>
    public IReadOnlyList<BatchHead> Heads
    {
        get
        {
            if (!_headsRead)
            {
                Reach();
            }

            return _heads;
        }
    }

    /// <summary>What the decision lines of an entry, one of <see cref="Heads"/>, are marked with.</summary>
    public LineMarks MarksOf(long firstSequence) => _marks.GetValueOrDefault(firstSequence, LineMarks.Unknown);

    /// <summary>What it holds; needs no opening.</summary>
    public FileSpan Span => _closed?.Span ?? _span;

    /// <summary>Last tick it holds, or 0.</summary>
    public long LastSequence => Span.LastSequence;

    /// <summary>Whether it will not be written again.</summary>
    public bool IsClosed => _closed is not null;

    /// <summary>Whether an engine has it open.</summary>
    public bool IsOpen => _engine is not null;

    /// <summary>Why it could not be opened when it was last tried, or null.</summary>
    public string? Unreadable { get; private set; }

    /// <summary>Makes an empty file. It gets its name only when it is whole.</summary>
    public static RecordFile Create(IRecordDisk disk, FileKind kind, long firstSequence)
    {
        string name = kind.NameOf(firstSequence);
        string making = FileKind.WhileMaking(name);
        disk.Delete(making);
        disk.Delete(StoreEngine.LogNameOf(making));
        using (StoreEngine engine = new(disk, making))
        {
            BsonDocument seed = new() { ["_id"] = 0L };
            engine.Database.BeginTrans();
            foreach (string collection in kind.Collections)
            {
                engine.Database.GetCollection(collection).Insert(seed);
                engine.Database.GetCollection(collection).Delete(0L);
            }

            engine.Database.Commit();
            engine.Checkpoint(force: true);
        }

        disk.Delete(StoreEngine.LogNameOf(making));
        disk.Rename(making, name);
        return Open(disk, kind, name);
    }

    /// <summary>Opens a file and reads the heads of its entries.</summary>
    /// <exception cref="LiteException">The file is broken.</exception>
    /// <exception cref="InvalidDataException">The file is broken.</exception>
    public static RecordFile Open(IRecordDisk disk, FileKind kind, string name)
    {
        RecordFile file = new(disk, kind, name, null);
        file.Reach();
        return file;
    }

    /// <summary>A closed file, which is opened when something is asked of it.</summary>
    /// <exception cref="InvalidDataException">Its length is not what it was.</exception>
    public static RecordFile OfClosed(IRecordDisk disk, FileKind kind, ClosedFile closed)
    {
        using Stream stream = disk.Open(closed.Name);
        return stream.Length == closed.Bytes
            ? new RecordFile(disk, kind, closed.Name, closed)
            : throw new InvalidDataException($"it has {stream.Length} bytes; when it was closed it had {closed.Bytes}");
    }

    /// <summary>Opens the file when it is not open, or an error has closed it.</summary>
    public void Reach() => Use(_ => 0);

    /// <summary>Adds entries in one transaction, which is safe when this returns.</summary>
    public void Write(IReadOnlyList<FileEntry> entries)
    {
        Use(engine =>
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
                Note(entry.Head, entry.Marks);
            }

            engine.Checkpoint(force: false);
            return 0;
        });
    }

    /// <summary>Works the log into the data file.</summary>
    public void Checkpoint() => Use(engine =>
    {
        engine.Checkpoint(force: true);
        return 0;
    });

    /// <summary>Ends writing for ever. The file counts as closed once that is noted.</summary>
    /// <param name="note">Notes it; what it throws leaves the file as it was.</param>
    public void Close(Action<ClosedFile> note)
    {
        Checkpoint();
        Rest();
        _disk.Delete(StoreEngine.LogNameOf(Name));
        using Stream stream = _disk.Open(Name);
        ClosedFile closed = new(Name, stream.Length, CrcOf(stream), _span);
        note(closed);
        _closed = closed;
    }

    /// <summary>Compares a closed file with its checksum.</summary>
    /// <exception cref="InvalidDataException">It does not fit.</exception>
    public void CheckSum()
    {
        if (_closed is null)
        {
            return;
        }

        using Stream stream = _disk.Open(Name);
        if (CrcOf(stream) != _closed.Crc)
        {
            throw new InvalidDataException("It does not match the checksum noted when it was closed.");
        }
    }

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

    private static uint CrcOf(Stream stream)
    {
        Crc32 crc = new();
        crc.Append(stream);
        return crc.GetCurrentHashAsUInt32();
    }

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
        try
        {
            _engine = new StoreEngine(_disk, Name, IsClosed, _afterError);

            // Reading them loads the file whole. What was written since is known here, unless a write failed.
            if (!_headsRead || (_afterError && !IsClosed))
            {
                ReadHeads(_engine.Database);
            }

            _afterError = false;
            Unreadable = null;
            return _engine;
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception))
        {
            Unreadable = exception.Message;
            throw;
        }
    }

    private void ReadHeads(LiteDatabase database)
    {
        _headsRead = false;
        _heads.Clear();
        _marks.Clear();
        _span = default;
        foreach (BsonDocument document in database.GetCollection(_kind.Collections[0]).Query()
            .OrderBy("_id").Select(EntryDocument.HeadFields).ToEnumerable())
        {
            BatchHead head = EntryDocument.Head(document);
            if (head.Count < 1 || head.FirstSequence <= _span.LastSequence)
            {
                throw new InvalidDataException($"The entry of tick {head.FirstSequence} in '{Name}' overlaps the one before.");
            }

            Note(head, EntryDocument.Marks(document));
        }

        if (_closed is not null && _closed.Span != _span)
        {
            throw new InvalidDataException($"'{Name}' does not hold what was noted when it was closed.");
        }

        _headsRead = true;
    }

    private void Note(BatchHead head, LineMarks marks)
    {
        _heads.Add(head);
        if (marks != LineMarks.Unknown)
        {
            _marks[head.FirstSequence] = marks;
        }

        _span = _span.With(head);
    }
}
