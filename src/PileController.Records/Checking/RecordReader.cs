using System.Text.Json;
using PileController.Records.Keeping;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>A record opened to be looked at while no process writes in it. Nothing is moved or cut.</summary>
internal sealed class RecordReader : IDisposable
{
    private readonly IDisposable _lock;

    private RecordReader(IDisposable held, RecordContents contents, IReadOnlyList<string> problems)
    {
        _lock = held;
        Contents = contents;
        List<string> found = [.. problems];
        Batches = [.. contents.Batches(TimeRange.All, found.Add)];
        Problems = found;
    }

    /// <summary>All there is.</summary>
    public RecordContents Contents { get; }

    /// <summary>All batches, oldest first.</summary>
    public IReadOnlyList<StoredBatch> Batches { get; }

    /// <summary>What was found wrong while opening.</summary>
    public IReadOnlyList<string> Problems { get; }

    /// <summary>Opens a folder.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    /// <exception cref="RecordInUseException">A process has it open.</exception>
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
        IDisposable held = disk.Lock();
        RecordStore? store = null;
        try
        {
            store = RecordStore.Open(disk, int.MaxValue, setAside: false);
            List<string> problems = [.. store.Broken];
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

    /// <inheritdoc/>
    public void Dispose()
    {
        Contents.Store.Dispose();
        _lock.Dispose();
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
