using System.Text.Json;
using PileController.Records.Accounts;
using PileController.Records.Keeping;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>
/// A record opened to be looked at, whether or not a service writes in it: all that was safe when it was opened.
/// Nothing is moved, cut or marked. The service's ticks stay in its tail meanwhile, so close it soon.
/// </summary>
/// <threadsafety>One thread only.</threadsafety>
public sealed class RecordReader : IDisposable
{
    private readonly IDisposable _still;
    private readonly QueryCache _cache = new();

    private RecordReader(IDisposable held, RecordContents contents, IReadOnlyList<string> problems)
    {
        _still = held;
        Contents = contents;
        List<string> found = [.. problems];
        Batches = [.. contents.Batches(TimeRange.All, found.Add)];
        Problems = found;
    }

    /// <summary>All there is.</summary>
    internal RecordContents Contents { get; }

    /// <summary>What was found wrong while opening.</summary>
    public IReadOnlyList<string> Problems { get; }

    /// <summary>All batches, oldest first.</summary>
    internal IReadOnlyList<StoredBatch> Batches { get; }

    /// <summary>Opens a folder.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    /// <exception cref="RecordInUseException">It is being changed without a pause.</exception>
    public static RecordReader Open(string dataDirectory)
    {
        if (!LiteRecord.Exists(dataDirectory))
        {
            string why = Directory.Exists(dataDirectory) ? "it holds none of a record's files" : "no such folder";
            throw new DirectoryNotFoundException($"There is no record in '{dataDirectory}': {why}.");
        }

        return Open(new FolderDisk(dataDirectory));
    }

    internal static RecordReader Open(IRecordDisk disk)
    {
        IDisposable held = disk.KeepStill();
        RecordStore? store = null;
        try
        {
            store = RecordStore.Open(new StillDisk(disk), int.MaxValue, setAside: false);
            List<string> problems = [.. store.Broken.Select(broken => broken.ToString())];
            TailContents tail = Tail(disk, problems);
            if (tail.DamagedPlaces > 0)
            {
                problems.Add($"The tail is damaged in {tail.DamagedPlaces} places.");
            }

            if (tail.Base is { } start && start.LastSequence > store.Ticks.LastSequence)
            {
                problems.Add($"The store ends at tick {store.Ticks.LastSequence}; it has held tick {start.LastSequence}.");
            }

            Strays(store, problems);
            return new RecordReader(held, new RecordContents(store, tail.Packs), problems);
        }
        catch
        {
            store?.Dispose();
            held.Dispose();
            throw;
        }
    }

    /// <summary>A series; see <see cref="IPileRecord.SamplesAsync"/>.</summary>
    /// <param name="series">Its name.</param>
    /// <param name="fromUtcMilliseconds">First moment, inclusive.</param>
    /// <param name="toUtcMilliseconds">Last moment, exclusive.</param>
    /// <param name="stepMilliseconds">Bucket width; 0 for every tick.</param>
    /// <param name="tellDamage">Told of each part that had to be left out.</param>
    /// <exception cref="ArgumentException">No such series.</exception>
    public IReadOnlyList<SeriesPoint> Samples(
        string series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds, Action<string> tellDamage) =>
        RecordQueries.Samples(
            Contents, _cache, [series], new TimeRange(fromUtcMilliseconds, toUtcMilliseconds), stepMilliseconds, tellDamage)[0];

    /// <summary>Decisions, newest first; see <see cref="IPileRecord.DecisionsAsync"/>.</summary>
    /// <param name="ask">Which.</param>
    /// <param name="tellDamage">Told of each part that had to be left out.</param>
    public IReadOnlyList<DecisionLine> Decisions(DecisionAsk ask, Action<string> tellDamage) =>
        RecordQueries.Decisions(Contents, _cache, ask, tellDamage);

    /// <summary>Last tick that is safe, or 0.</summary>
    public long LastSequence => Math.Max(Batches.Count > 0 ? Batches[^1].Head.LastSequence : 0, Contents.LastSummed);

    /// <summary>What blocks of ticks came to; see <see cref="IPileRecord.AccountsAsync"/>.</summary>
    /// <param name="afterSequence">Ticks up to this number are left out; 0 for none.</param>
    /// <param name="mostBlocks">At most so many blocks, 1 or more.</param>
    /// <param name="rulesOf">What ticks are held against, by the hash of the settings they were made with.</param>
    /// <param name="tellDamage">Told of each part that had to be left out.</param>
    public IReadOnlyList<BlockAccount> Accounts(
        long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf, Action<string> tellDamage) =>
        RecordQueries.Accounts(Batches, _cache, afterSequence, mostBlocks, rulesOf, tellDamage);

    /// <inheritdoc/>
    public void Dispose()
    {
        Contents.Store.Dispose();
        _still.Dispose();
    }

    private static TailContents Tail(IRecordDisk disk, List<string> problems)
    {
        try
        {
            return TailFile.Peek(disk);
        }
        catch (Exception exception) when (exception is InvalidDataException or JsonException)
        {
            problems.Add($"The tail cannot be read: {exception.Message}");
            return TailContents.Of([]);
        }
    }

    private static void Strays(RecordStore store, List<string> problems)
    {
        foreach (RecordFile file in store.Ticks.Files)
        {
            try
            {
                HashSet<long> blocks = [.. file.Heads.Select(head => head.FirstSequence)];
                problems.AddRange(file.LineIds().Where(id => !blocks.Contains(id))
                    .Select(id => $"'{file.Name}' has decision lines filed under tick {id}, and no block."));
            }
            catch (Exception exception) when (RecordShelf.IsDamage(exception))
            {
                problems.Add($"The decision lines of '{file.Name}' cannot be listed: {exception.Message}");
            }
        }
    }
}
