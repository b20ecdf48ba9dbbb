using System.Text.Json;
using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>
/// The second stage of a tick: what is safe in the tail waits here until there is a block of it. It is committed to the
/// store, then the tail is cut, then days that are whole are summed up.
/// </summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class StoreStage
{
    private readonly IRecordDisk _disk;
    private readonly RecordOptions _options;
    private readonly RecordStore _store;
    private readonly TailFile _tail;
    private readonly DayKeeper _days;
    private readonly Backoff _backoff;
    private readonly Faults _faults;
    private readonly List<PackedTicks> _pending = [];

    /// <summary>Takes up what was found in a record.</summary>
    public StoreStage(IRecordDisk disk, RecordOptions options, RecordStart start, TimeProvider time, Faults faults)
    {
        _disk = disk;
        _options = options;
        _store = start.Store;
        _tail = start.Tail;
        _days = new DayKeeper(_store, options, faults);
        _backoff = new Backoff(time);
        _faults = faults;
        _pending.AddRange(start.Pending);
        MemoryText = start.Memory;
    }

    /// <summary>What waits, oldest first.</summary>
    public IReadOnlyList<PackedTicks> Pending => _pending;

    /// <summary>How many ticks wait.</summary>
    public int Ticks => _pending.Sum(pack => pack.Batch.Count);

    /// <summary>Whether some of what waits is not in the tail: only a commit makes it safe.</summary>
    public bool IsUnsafe { get; private set; }

    /// <summary>Last tick the store holds, or 0.</summary>
    public long LastStored => _store.Ticks.LastSequence;

    /// <summary>What the last tick that was committed, or was found at the start, handed on; null when there is none.</summary>
    public JsonElement? MemoryText { get; private set; }

    /// <summary>Takes what is safe in the tail.</summary>
    public void AddSafe(IEnumerable<PackedTicks> packs) => _pending.AddRange(packs);

    /// <summary>Takes what is safe nowhere yet.</summary>
    public void AddUnsafe(PackedTicks pack)
    {
        _pending.Add(pack);
        IsUnsafe = true;
    }

    /// <summary>Commits all that waits. False when it could not be done; it goes on waiting then, and the reason is told.</summary>
    /// <param name="force">True to try even shortly after a failure.</param>
    public bool TryCommit(bool force)
    {
        if (!force && !_backoff.MayTry)
        {
            return false;
        }

        try
        {
            using IDisposable? claim = _disk.TryClaim();
            if (claim is null)
            {
                TellOfAReaderWhenItStaysLong();
                return false;
            }

            Commit();
            _backoff.Worked();
            _faults.Over(FaultSource.Store);
            return true;
        }
        catch (Exception exception) when (IsStoreError(exception))
        {
            _backoff.Failed();
            _faults.Now(FaultSource.Store, exception.Message);
            return false;
        }
    }

    /// <summary>Works the logs into their files, unless somebody reads.</summary>
    public void Checkpoint()
    {
        try
        {
            // While another process reads, the logs may as well stay as they are.
            using IDisposable? claim = _disk.TryClaim();
            if (claim is not null)
            {
                _store.Checkpoint();
            }
        }
        catch (Exception exception) when (IsStoreError(exception))
        {
            _faults.Now(FaultSource.Store, exception.Message);
        }
    }

    private static bool IsStoreError(Exception exception) =>
        exception is IOException or UnauthorizedAccessException || RecordShelf.IsDamage(exception);

    // Blocks that wait for a reader to end are safe in the tail: no fault until there are some of them.
    private void TellOfAReaderWhenItStaysLong()
    {
        if (IsUnsafe || Ticks >= 3 * _options.BlockTicks)
        {
            _faults.Now(FaultSource.Store, "another process has been reading the record for long.");
        }
    }

    private void Commit()
    {
        JsonElement? memory = PackedTicks.NewestMemory(_pending) ?? MemoryText;

        // A commit whose call failed may have gone through all the same (LiteDB issue 2821).
        _store.Ticks.Recover(_faults);
        _pending.RemoveAll(pack => pack.Batch.Head.LastSequence <= LastStored);
        if (_pending.Count > 0)
        {
            _store.Ticks.Write([.. BlockJoiner.Join(_pending, _options.BlockTicks).Select(FileEntry.Of)]);
        }

        MemoryText = memory;
        _pending.Clear();
        IsUnsafe = false;
        _tail.Restart(new TailBase(LastStored, memory) { OpenFiles = _store.OpenFiles });
        KeepDays();
    }

    // Ticks are safe whether or not this works; it is tried again at the next commit.
    private void KeepDays()
    {
        try
        {
            _days.Keep();
            _faults.Aside(_disk.SetAside());
            _faults.Over(FaultSource.Days);
        }
        catch (Exception exception) when (IsStoreError(exception))
        {
            _faults.Now(FaultSource.Days, exception.Message);
        }
    }
}
