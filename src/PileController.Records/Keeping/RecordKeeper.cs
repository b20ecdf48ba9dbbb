using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>
/// The record while it is written. A tick is gathered in the builder and handed to two stages:
/// <see cref="TailStage"/> makes it safe, <see cref="StoreStage"/> moves it to where it stays.
/// </summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class RecordKeeper : IDisposable
{
    private readonly RecordOptions _options;
    private readonly IDisposable _lock;
    private readonly RecordStore _store;
    private readonly TailFile _tail;
    private readonly TailStage _toTail;
    private readonly StoreStage _toStore;
    private readonly BatchBuilder _builder;
    private readonly Faults _faults;
    private bool _bulk;
    private bool _syncDue;
    private Memory? _lastMemory;

    /// <summary>Opens the record: locks it, sets broken files aside and takes up what the tail holds.</summary>
    /// <exception cref="RecordInUseException">Another process is in.</exception>
    public RecordKeeper(IRecordDisk disk, RecordOptions options, TimeProvider time, Faults faults)
    {
        options.Check();
        _options = options;
        _faults = faults;
        _builder = new BatchBuilder(options.Origin, options.BlockTicks);
        _lock = disk.Lock();
        try
        {
            RecordStart start = RecordStart.Of(disk, options.FileTicks, faults);
            _store = start.Store;
            _tail = start.Tail;
            _toTail = new TailStage(_tail, time, faults);
            _toStore = new StoreStage(disk, options, start, time, faults);
            LastSequence = start.LastSequence;
            SafeSequence = start.LastSequence;
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

        if (_toTail.Ticks + _toStore.Ticks + _builder.Count >= _options.WaitingTicks && !_bulk)
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
            _syncDue |= tick.Decision.Kinds != DecisionKinds.Steady || _toTail.Ticks + _builder.Count >= _options.SyncTicks;
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
        return new RecordContents(_store, [.. _toStore.Pending, .. _toTail.Waiting]);
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
            _lastMemory ??= _toStore.MemoryText is { } text ? RecordJson.ToMemory(text) : null;
            if (_lastMemory is { } memory && memory.Sequence < LastSequence)
            {
                _faults.Stand($"What tick {LastSequence} handed on is lost: it goes on from what tick {memory.Sequence} handed on.");
                _lastMemory = memory with { Sequence = LastSequence };
            }

            return _lastMemory;
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
        if (_toStore.Ticks > 0)
        {
            TryCommit(force: true);
        }

        _toStore.Checkpoint();
        _tail.Dispose();
        _store.Dispose();
        _lock.Dispose();
    }

    private void SealBuilder()
    {
        if (_builder.Count == 0)
        {
            return;
        }

        PackedTicks pack = _builder.Pack(squeeze: _bulk);
        if (_bulk)
        {
            _toStore.AddUnsafe(pack);
        }
        else
        {
            _toTail.Add(pack);
        }

        _builder.Clear();
    }

    private void CommitBulkWhenDue()
    {
        if (_builder.IsFull)
        {
            SealBuilder();
            if (_toStore.Ticks >= _options.BulkCommitTicks)
            {
                TryCommit(force: false);
            }
        }
    }

    private void TrySync(bool force)
    {
        if (_bulk || (_toStore.IsUnsafe && !TryCommit(force)))
        {
            return;
        }

        if (!force && !_toTail.MayTry)
        {
            return;
        }

        SealBuilder();
        if (!_toTail.TryAppend(_toStore))
        {
            return;
        }

        _syncDue = false;
        SafeSequence = LastSequence;
        if (_toStore.Ticks >= _options.BlockTicks)
        {
            TryCommit(force: false);
        }
    }

    private bool TryCommit(bool force)
    {
        bool isCommitted = _toStore.TryCommit(force);

        // What was written is safe, whether or not the tail could be cut after it.
        SafeSequence = Math.Max(SafeSequence, _toStore.LastStored);
        return isCommitted;
    }
}
