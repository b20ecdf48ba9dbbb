using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>
/// The record's two stages. A tick is gathered in the builder, made safe in the tail, and committed to the store
/// with the rest of its block; only then is the tail cut.
/// </summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class RecordKeeper : IDisposable
{
    private readonly RecordOptions _options;
    private readonly IRecordDisk _disk;
    private readonly IDisposable _lock;
    private readonly RecordStore _store;
    private readonly DayKeeper _days;
    private readonly TailFile _tail;
    private readonly BatchBuilder _builder;
    private readonly Backoff _tailBackoff;
    private readonly Backoff _storeBackoff;
    private readonly Faults _faults;

    // Packed, not yet safe anywhere. Then: safe in the tail (or, in bulk, about to be committed), not yet in the store.
    private readonly List<PackedTicks> _waiting = [];
    private readonly List<PackedTicks> _pending = [];
    private bool _bulk;
    private bool _pendingUnsafe;
    private bool _syncDue;
    private Memory? _lastMemory;
    private JsonElement? _lastMemoryText;

    /// <summary>Opens the record: locks it, sets broken files aside and takes up what the tail holds.</summary>
    /// <exception cref="RecordInUseException">Another process is in.</exception>
    public RecordKeeper(IRecordDisk disk, RecordOptions options, TimeProvider time, Faults faults)
    {
        options.Check();
        _options = options;
        _disk = disk;
        _faults = faults;
        _builder = new BatchBuilder(options.Origin, options.BlockTicks);
        _tailBackoff = new Backoff(time);
        _storeBackoff = new Backoff(time);
        _lock = disk.Lock();
        try
        {
            RecordStart start = RecordStart.Of(disk, options.FileTicks, faults);
            _store = start.Store;
            _tail = start.Tail;
            _days = new DayKeeper(_store, options, faults);
            _pending.AddRange(start.Pending);
            LastSequence = start.LastSequence;
            SafeSequence = start.LastSequence;
            _lastMemoryText = start.Memory;
        }
        catch
        {
            _lock.Dispose();
            throw;
        }
    }

    /// <summary>Last tick taken.</summary>
    public long LastSequence { get; private set; }

    /// <summary>Last tick that is safe on the disk.</summary>
    public long SafeSequence { get; private set; }

    /// <summary>Ticks dropped.</summary>
    public long Dropped { get; private set; }

    /// <summary>Takes one tick. Never throws for a failing store.</summary>
    public void Keep(TickEntry tick)
    {
        long sequence = tick.Decision.Sequence;
        if (sequence <= LastSequence)
        {
            Dropped++;
            _faults.Stand($"Tick {sequence} came after tick {LastSequence} and was dropped: numbers must grow.");
            return;
        }

        if (_builder.Count > 0 && (_builder.IsFull || !_builder.IsContinuedBy(tick)))
        {
            SealBuilder();
        }

        if (Rows(_waiting) + Rows(_pending) + _builder.Count >= _options.WaitingTicks && !_bulk)
        {
            Dropped++;
            TrySync(force: false);
            return;
        }

        _builder.Add(tick);
        LastSequence = sequence;
        _lastMemory = tick.MemoryAfter;
        if (_bulk)
        {
            CommitBulkWhenDue();
        }
        else
        {
            _syncDue |= tick.Decision.Kinds != DecisionKinds.Steady || Rows(_waiting) + _builder.Count >= _options.SyncTicks;
        }
    }

    /// <summary>Makes ticks safe when a decision or a minute of steady ticks asks for it.</summary>
    public void SyncIfDue()
    {
        if (_syncDue)
        {
            TrySync(force: false);
        }
    }

    /// <summary>Makes everything taken so far safe.</summary>
    /// <exception cref="IOException">It cannot be done now.</exception>
    public void Flush()
    {
        TrySync(force: true);
        if (SafeSequence < LastSequence)
        {
            throw new IOException(_faults.Text ?? "The record could not be made safe.");
        }
    }

    /// <summary>From here on nothing is synced but whole commits, a day of ticks each.</summary>
    public void BeginBulk()
    {
        Flush();
        _bulk = true;
    }

    /// <summary>Ends bulk writing; everything is safe when this returns.</summary>
    /// <exception cref="IOException">It cannot be done now.</exception>
    public void EndBulk()
    {
        SealBuilder();
        _bulk = false;
        Flush();
    }

    /// <summary>Everything there is, what is not yet packed included.</summary>
    public RecordContents Contents()
    {
        SealBuilder();
        return new RecordContents(_store, [.. _pending, .. _waiting]);
    }

    /// <summary>Every batch there is, oldest first, what is not yet packed included.</summary>
    public IEnumerable<StoredBatch> Batches() => Contents().Batches(TimeRange.All, _faults.Damaged);

    /// <summary>Lets go of files that a question has opened.</summary>
    public void Rest() => _store.Rest();

    /// <summary>What the last tick handed on, or null for an empty record or one whose memory this build cannot read.</summary>
    public Memory? LastMemory()
    {
        try
        {
            // A memory that is older than the last tick, for want of a newer, must not count those numbers again.
            _lastMemory ??= _lastMemoryText is { } text ? RecordJson.ToMemory(text) : null;
            return _lastMemory is { } memory && memory.Sequence < LastSequence ? memory with { Sequence = LastSequence } : _lastMemory;
        }
        catch (JsonException exception)
        {
            _faults.Stand($"What the last tick handed on cannot be read by this build: {exception.Message}");
            return null;
        }
    }

    /// <summary>Commits everything and closes. What cannot be committed stays in the tail.</summary>
    public void Dispose()
    {
        TrySync(force: true);
        if (_pending.Count > 0)
        {
            TryCommit(force: true);
        }

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

        _tail.Dispose();
        _store.Dispose();
        _lock.Dispose();
    }

    private RecordShelf Ticks => _store.Ticks;

    private static int Rows(List<PackedTicks> packs) => packs.Sum(pack => pack.Batch.Count);

    private static bool IsStoreError(Exception exception) =>
        exception is IOException or UnauthorizedAccessException || RecordShelf.IsDamage(exception);

    private void SealBuilder()
    {
        if (_builder.Count == 0)
        {
            return;
        }

        (_bulk ? _pending : _waiting).Add(_builder.Pack(squeeze: _bulk));
        _pendingUnsafe |= _bulk;
        _builder.Clear();
    }

    private void CommitBulkWhenDue()
    {
        if (_builder.IsFull)
        {
            SealBuilder();
            if (Rows(_pending) >= _options.BulkCommitTicks)
            {
                TryCommit(force: false);
            }
        }
    }

    private void TrySync(bool force)
    {
        if (_bulk || (_pendingUnsafe && !TryCommit(force)))
        {
            return;
        }

        if (!force && !_tailBackoff.MayTry)
        {
            return;
        }

        SealBuilder();
        if (_waiting.Count > 0 && !TryTail())
        {
            return;
        }

        _syncDue = false;
        SafeSequence = LastSequence;
        if (Rows(_pending) >= _options.BlockTicks)
        {
            TryCommit(force: false);
        }
    }

    private bool TryTail()
    {
        try
        {
            _tail.Append(_waiting);
            _pending.AddRange(_waiting);
            _waiting.Clear();
            _tailBackoff.Worked();
            _faults.Over(FaultSource.Tail);
            return true;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            _tailBackoff.Failed();
            _faults.Now(FaultSource.Tail, exception.Message);
            return false;
        }
    }

    private bool TryCommit(bool force)
    {
        if (!force && !_storeBackoff.MayTry)
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
            _storeBackoff.Worked();
            _faults.Over(FaultSource.Store);
            return true;
        }
        catch (Exception exception) when (IsStoreError(exception))
        {
            _storeBackoff.Failed();
            _faults.Now(FaultSource.Store, exception.Message);
            return false;
        }
    }

    // Blocks that wait for a reader to end are safe in the tail: no fault until there are some of them.
    private void TellOfAReaderWhenItStaysLong()
    {
        if (_pendingUnsafe || Rows(_pending) >= 3 * _options.BlockTicks)
        {
            _faults.Now(FaultSource.Store, "another process has been reading the record for long.");
        }
    }

    private void Commit()
    {
        JsonElement? memory = _pending.Count > 0 ? _pending[^1].Batch.Text().MemoryAfter : _lastMemoryText;

        // A commit whose call failed may have gone through all the same (LiteDB issue 2821).
        Ticks.Recover(_faults);
        _pending.RemoveAll(pack => pack.Batch.Head.LastSequence <= Ticks.LastSequence);
        if (_pending.Count > 0)
        {
            Ticks.Write([.. BlockJoiner.Join(_pending, _options.BlockTicks).Select(FileEntry.Of)]);
        }

        _lastMemoryText = memory;
        _pending.Clear();
        _pendingUnsafe = false;
        SafeSequence = Math.Max(SafeSequence, Ticks.LastSequence);
        _tail.Restart(new TailBase(Ticks.LastSequence, memory) { OpenFiles = _store.OpenFiles });
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
