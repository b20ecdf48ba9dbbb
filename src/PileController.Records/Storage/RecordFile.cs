using LiteDB;
using PileController.Control.Decisions;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// One file of the store: a stretch of blocks, each a document whose id is the number of its first tick, and the
/// lines of their decisions in a collection beside them. No secondary index, no mapped types.
/// </summary>
/// <threadsafety>One thread only. After an error the file is closed and opened again at the next use: LiteDB answers
/// every later call with the first error.</threadsafety>
internal sealed class RecordFile : IDisposable
{
    private const string Blocks = "blocks";
    private const string Lines = "decisions";
    private const string Ending = ".pile";
    private const string Unfinished = ".making";
    private readonly IRecordDisk _disk;
    private readonly List<BatchHead> _heads = [];
    private StoreEngine? _engine;
    private bool _afterError;

    private RecordFile(IRecordDisk disk, string name)
    {
        _disk = disk;
        Name = name;
    }

    /// <summary>Plain name of the file.</summary>
    public string Name { get; }

    /// <summary>The heads of its blocks, in order.</summary>
    public IReadOnlyList<BatchHead> Heads => _heads;

    /// <summary>Last tick it holds, or 0.</summary>
    public long LastSequence => _heads.Count == 0 ? 0 : _heads[^1].LastSequence;

    /// <summary>How many ticks it holds.</summary>
    public long Ticks => _heads.Sum(head => (long)head.Count);

    /// <summary>Whether a plain name is one of a finished file.</summary>
    public static bool IsName(string name) => name.EndsWith(Ending, StringComparison.Ordinal);

    /// <summary>Whether a plain name is left over from a file that was being made.</summary>
    public static bool IsUnfinished(string name) => name.Contains(Ending + Unfinished, StringComparison.Ordinal);

    /// <summary>Makes an empty file. It gets its name only when it is whole.</summary>
    public static RecordFile Create(IRecordDisk disk, long firstSequence)
    {
        string name = $"ticks-{firstSequence:D12}{Ending}";
        string making = name + Unfinished;
        disk.Delete(making);
        disk.Delete(StoreEngine.LogNameOf(making));
        using (StoreEngine engine = new(disk, making))
        {
            BsonDocument seed = new() { ["_id"] = 0L };
            foreach (string collection in new[] { Blocks, Lines })
            {
                engine.Database.GetCollection(collection).Insert(seed);
                engine.Database.GetCollection(collection).Delete(0L);
            }

            engine.Checkpoint(force: true);
        }

        disk.Delete(StoreEngine.LogNameOf(making));
        disk.Rename(making, name);
        return Open(disk, name);
    }

    /// <summary>Opens a file and reads the heads of its blocks.</summary>
    /// <exception cref="LiteException">The file is broken.</exception>
    /// <exception cref="InvalidDataException">The file is broken.</exception>
    public static RecordFile Open(IRecordDisk disk, string name)
    {
        RecordFile file = new(disk, name);
        file.Reach();
        return file;
    }

    /// <summary>Opens the file when an error has closed it.</summary>
    public void Reach() => Use(_ => 0);

    /// <summary>Adds blocks in one transaction, which is safe when this returns.</summary>
    public void Write(IReadOnlyList<PackedTicks> packs)
    {
        Use(engine =>
        {
            LiteDatabase database = engine.Database;
            database.BeginTrans();
            ILiteCollection<BsonDocument> blocks = database.GetCollection(Blocks);
            ILiteCollection<BsonDocument> lines = database.GetCollection(Lines);
            foreach (PackedTicks pack in packs)
            {
                blocks.Insert(ToDocument(pack.Batch));
                if (pack.Lines is { } some)
                {
                    lines.Insert(new BsonDocument { ["_id"] = pack.Batch.FirstSequence, ["p"] = some.Bytes });
                }
            }

            database.Commit();
            _heads.AddRange(packs.Select(pack => pack.Batch.Head));
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

    /// <summary>Reads one block.</summary>
    /// <exception cref="InvalidDataException">It is gone or does not match its checksum or its id.</exception>
    public PackedBatch Block(long firstSequence)
    {
        PackedBatch batch = PackedBatch.Parse(Bytes(Blocks, firstSequence)
            ?? throw new InvalidDataException($"The block of tick {firstSequence} is not in '{Name}'."));
        return batch.FirstSequence == firstSequence
            ? batch
            : throw new InvalidDataException($"The block filed under tick {firstSequence} is that of tick {batch.FirstSequence}.");
    }

    /// <summary>Reads the decision lines of one block, oldest first.</summary>
    /// <exception cref="InvalidDataException">They do not match their checksum.</exception>
    public IReadOnlyList<DecisionLine> LinesOf(long firstSequence) =>
        Bytes(Lines, firstSequence) is { } bytes ? new PackedLines(bytes).All() : [];

    /// <summary>The ids under which decision lines are filed.</summary>
    public IReadOnlyList<long> LineIds() => Use(engine => (IReadOnlyList<long>)
        [.. engine.Database.GetCollection(Lines).Query().Select("{_id}").ToEnumerable().Select(d => d["_id"].AsInt64)]);

    /// <inheritdoc/>
    public void Dispose() => Close();

    private byte[]? Bytes(string collection, long id) =>
        Use(engine => engine.Database.GetCollection(collection).FindById(id)?["p"].AsBinary);

    private T Use<T>(Func<StoreEngine, T> work)
    {
        try
        {
            if (_engine is null)
            {
                _engine = new StoreEngine(_disk, Name, _afterError);
                ReadHeads(_engine.Database);
                _afterError = false;
            }

            return work(_engine);
        }
        catch
        {
            _afterError = true;
            Close();
            throw;
        }
    }

    // What goes wrong while closing a file that has already failed adds nothing to the first error.
    private void Close()
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

    private void ReadHeads(LiteDatabase database)
    {
        _heads.Clear();
        foreach (BsonDocument document in database.GetCollection(Blocks).Query()
            .OrderBy("_id").Select("{_id,n,f,t,k}").ToEnumerable())
        {
            BatchHead head = new(
                document["_id"].AsInt64, document["n"].AsInt32, document["f"].AsInt64, document["t"].AsInt64,
                (DecisionKinds)document["k"].AsInt32);
            if (head.Count < 1 || head.FirstSequence <= LastSequence)
            {
                throw new InvalidDataException($"The block of tick {head.FirstSequence} in '{Name}' overlaps the one before.");
            }

            _heads.Add(head);
        }
    }

    private static BsonDocument ToDocument(PackedBatch batch) => new()
    {
        ["_id"] = batch.FirstSequence,
        ["n"] = batch.Count,
        ["f"] = batch.Head.LeastUtc,
        ["t"] = batch.Head.MostUtc,
        ["k"] = (int)batch.Head.Kinds,
        ["p"] = batch.Bytes,
    };
}
