using System.Threading.Channels;
using PileController.Control;
using PileController.Records.Accounts;
using PileController.Records.Checking;
using PileController.Records.Keeping;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records;

/// <summary>
/// The record on disk. Ticks and questions go through one bounded queue to one owner thread, so a question sees
/// every tick handed over before it, and control never waits for the disk.
/// </summary>
/// <threadsafety>Safe from any thread.</threadsafety>
public sealed class LiteRecord : IPileRecord
{
    // Under heavy load so many ticks share one sync.
    private const int TicksASync = 64;
    private readonly Channel<object> _queue;
    private readonly IRecordDisk _disk;
    private readonly RecordKeeper _keeper;
    private readonly QueryCache _cache = new();
    private readonly Faults _faults;
    private readonly Thread _owner;
    private readonly TaskCompletionSource _closed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private long _dropped;
    private RecordHealth _health = new(true, 0, 0, 0, null);

    private LiteRecord(RecordOptions options, IRecordDisk disk, TimeProvider time)
    {
        _disk = disk;
        _faults = new Faults(time);
        _keeper = new RecordKeeper(disk, options, time, _faults);
        _queue = Channel.CreateBounded<object>(new BoundedChannelOptions(options.QueueTicks) { SingleReader = true });
        PublishHealth();
        _owner = new Thread(Own) { IsBackground = true, Name = "record" };
        _owner.Start();
    }

    /// <inheritdoc/>
    public RecordHealth Health
    {
        get
        {
            RecordHealth health = Volatile.Read(ref _health);
            return health with
            {
                QueuedTicks = _queue.Reader.Count,
                DroppedTicks = health.DroppedTicks + Interlocked.Read(ref _dropped),
            };
        }
    }

    /// <summary>Opens a record, or begins one. Broken files are set aside and named in <see cref="Health"/>.</summary>
    /// <param name="options">Where, and how often it is made safe.</param>
    /// <param name="time">The clock by which attempts at a failing disk are spaced; null for the system's.</param>
    /// <exception cref="RecordInUseException">Another process writes in it.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    /// <exception cref="IOException">The folder cannot be used.</exception>
    public static LiteRecord Open(RecordOptions options, TimeProvider? time = null) =>
        Open(options, new FolderDisk(options.DataDirectory, time), time ?? TimeProvider.System);

    internal static LiteRecord Open(RecordOptions options, IRecordDisk disk, TimeProvider time) => new(options, disk, time);

    /// <summary>Whether a folder holds a record. Looks only; makes nothing.</summary>
    public static bool Exists(string dataDirectory) =>
        Directory.Exists(dataDirectory)
        && (File.Exists(Path.Combine(dataDirectory, Storage.TailFile.Name)) || Directory.EnumerateFiles(dataDirectory, "*.pile").Any());

    /// <inheritdoc/>
    public bool TryAppend(TickEntry tick)
    {
        if (_queue.Writer.TryWrite(tick))
        {
            return true;
        }

        Interlocked.Increment(ref _dropped);
        return false;
    }

    /// <summary>
    /// Appends a history as fast as it is made: no sync a minute, one commit a day of ticks. All of it is safe when
    /// the task ends. Waits for the disk instead of dropping; meant for the start, before control runs.
    /// </summary>
    /// <param name="ticks">The ticks, in order; made while they are written.</param>
    /// <param name="cancellation">Ends it early; what was written so far stays.</param>
    /// <exception cref="IOException">The store failed.</exception>
    public async Task AppendHistoryAsync(IEnumerable<TickEntry> ticks, CancellationToken cancellation)
    {
        await AskAsync(keeper => Done(keeper.BeginBulk), cancellation).ConfigureAwait(false);
        try
        {
            foreach (TickEntry tick in ticks)
            {
                if (!_queue.Writer.TryWrite(tick))
                {
                    await _queue.Writer.WriteAsync(tick, cancellation).ConfigureAwait(false);
                }
            }
        }
        finally
        {
            await AskAsync(keeper => Done(keeper.EndBulk), CancellationToken.None).ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public Task FlushAsync(CancellationToken cancellation) => AskAsync(keeper => Done(keeper.Flush), cancellation);

    /// <inheritdoc/>
    public Task<Memory?> LastMemoryAsync(CancellationToken cancellation) =>
        AskAsync(keeper => keeper.LastMemory(), cancellation);

    /// <inheritdoc/>
    public Task<IReadOnlyList<IReadOnlyList<SeriesPoint>>> SamplesAsync(
        IReadOnlyList<string> series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds,
        CancellationToken cancellation) =>
        AskAsync(
            keeper => RecordQueries.Samples(
                keeper.Contents(), _cache, series, new TimeRange(fromUtcMilliseconds, toUtcMilliseconds), stepMilliseconds,
                _faults.Damaged),
            cancellation);

    /// <inheritdoc/>
    public Task<IReadOnlyList<DecisionLine>> DecisionsAsync(DecisionAsk ask, CancellationToken cancellation) =>
        AskAsync(keeper => RecordQueries.Decisions(keeper.Contents(), _cache, ask, _faults.Damaged), cancellation);

    /// <inheritdoc/>
    public Task<IReadOnlyList<BlockAccount>> AccountsAsync(
        long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf, CancellationToken cancellation) =>
        AskAsync(
            keeper => RecordQueries.Accounts(keeper.Batches(), _cache, afterSequence, mostBlocks, rulesOf, _faults.Damaged), cancellation);

    /// <inheritdoc/>
    public Task<RecalledTick?> TickAsync(long sequence, ReplaySteps steps, CancellationToken cancellation) =>
        AskAsync(keeper => TickRecall.Find(keeper.Batches(), sequence, steps), cancellation);

    /// <summary>Checks the whole record while it runs; see <see cref="RecordVerifier"/>.</summary>
    public Task<VerifyReport> VerifyAsync(CancellationToken cancellation) =>
        AskAsync(keeper => RecordVerifier.Check(keeper.Contents(), []), cancellation);

    /// <summary>Runs the whole record again while it runs; see <see cref="RecordReplayer"/>.</summary>
    public Task<ReplayReport> ReplayAsync(ReplayStep step, CancellationToken cancellation) =>
        AskAsync(keeper => RecordReplayer.Run(keeper.Batches(), _ => step), cancellation);

    /// <summary>Writes what is queued, commits it and closes the files.</summary>
    public async ValueTask DisposeAsync()
    {
        _queue.Writer.TryComplete();
        await _closed.Task.ConfigureAwait(false);
    }

    private static bool Done(Action work)
    {
        work();
        return true;
    }

    private async Task<T> AskAsync<T>(Func<RecordKeeper, T> question, CancellationToken cancellation)
    {
        Question<T> asked = new(question, cancellation);
        try
        {
            await _queue.Writer.WriteAsync(asked, cancellation).ConfigureAwait(false);
        }
        catch (ChannelClosedException)
        {
            throw new ObjectDisposedException(nameof(LiteRecord));
        }

        return await asked.Answer.ConfigureAwait(false);
    }

    private void Own()
    {
        try
        {
            while (_queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
            {
                int ticks = 0;
                while (_queue.Reader.TryRead(out object? item))
                {
                    Guard(() => Take(item));
                    if (++ticks % TicksASync == 0)
                    {
                        Guard(_keeper.SyncIfDue);
                    }
                }

                Guard(_keeper.SyncIfDue);
                PublishHealth();
            }
        }
        finally
        {
            Guard(_keeper.Dispose);
            PublishHealth();
            _closed.SetResult();
        }
    }

    // Whatever goes wrong in here is a fault of the record and must not stop the process that controls the heap.
    private void Guard(Action work)
    {
        try
        {
            work();
        }
        catch (Exception exception)
        {
            _faults.Stand($"The record met an error it did not expect: {exception.Message}");
        }
    }

    private void Take(object item)
    {
        if (item is TickEntry tick)
        {
            _keeper.Keep(tick);
            return;
        }

        // Health is told first, so that who waited for a flush sees what it did.
        IQuestion question = (IQuestion)item;
        question.Work(_keeper);
        _keeper.Rest();
        PublishHealth();
        question.Reply();
    }

    private void PublishHealth() => Volatile.Write(
        ref _health,
        new RecordHealth(!_faults.IsFailing, _keeper.SafeSequence, 0, _keeper.Dropped, _faults.Text)
        {
            Damage = _faults.Damage,
            FreeBytes = _disk.FreeBytes(),
        });
}
