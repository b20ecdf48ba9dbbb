using System.Text.Json;

namespace PileController.Records.Storage;

/// <summary>The store: a shelf for each kind of file, and the list of the closed ones.</summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class RecordStore : IDisposable
{
    private RecordStore(RecordShelf ticks, RecordShelf minutes, RecordShelf lasting, IReadOnlyList<BrokenFile> broken)
    {
        Ticks = ticks;
        Minutes = minutes;
        Lasting = lasting;
        Broken = broken;
    }

    /// <summary>Blocks of ticks.</summary>
    public RecordShelf Ticks { get; }

    /// <summary>The finest summaries.</summary>
    public RecordShelf Minutes { get; }

    /// <summary>What is kept for ever.</summary>
    public RecordShelf Lasting { get; }

    /// <summary>All files.</summary>
    public IEnumerable<RecordFile> Files => Ticks.Files.Concat(Minutes.Files).Concat(Lasting.Files);

    /// <summary>What could not be opened or is gone, each with the reason.</summary>
    public IReadOnlyList<BrokenFile> Broken { get; }

    /// <summary>What the files that are still written hold for certain.</summary>
    public IReadOnlyList<OpenFile> OpenFiles => [.. Ticks.OpenFiles, .. Minutes.OpenFiles, .. Lasting.OpenFiles];

    /// <summary>Finds all files.</summary>
    /// <param name="disk">Where.</param>
    /// <param name="fileTicks">Ticks after which a new file is begun.</param>
    /// <param name="setAside">Whether a broken one is moved to quarantine.</param>
    /// <param name="noted">What files that were still written once held for certain; they are not read whole then.</param>
    public static RecordStore Open(IRecordDisk disk, int fileTicks, bool setAside, IReadOnlyList<OpenFile>? noted = null)
    {
        List<BrokenFile> broken = [];
        Manifest manifest = ManifestOf(disk, setAside, broken);
        foreach (string name in disk.Names().Where(name => setAside && FileKind.IsUnfinished(name)))
        {
            disk.Delete(name);
        }

        RecordShelf[] shelves = [.. new[] { FileKind.Ticks, FileKind.Minutes, FileKind.Lasting }
            .Select(kind => RecordShelf.Open(disk, kind, fileTicks, manifest, noted ?? [], setAside))];
        broken.AddRange(shelves.SelectMany(shelf => shelf.Broken));
        return new RecordStore(shelves[0], shelves[1], shelves[2], broken);
    }

    /// <summary>Works all logs into their data files.</summary>
    public void Checkpoint() => Each(shelf => shelf.Checkpoint());

    /// <summary>Lets go of closed files that a question has opened.</summary>
    public void Rest() => Each(shelf => shelf.Rest());

    /// <summary>Lets go of every file until it is used again.</summary>
    public void LetGo() => Each(shelf => shelf.LetGo());

    /// <inheritdoc/>
    public void Dispose() => Each(shelf => shelf.Dispose());

    // A list that is lost costs time and nothing else: every file is opened, and listed anew.
    private static Manifest ManifestOf(IRecordDisk disk, bool setAside, List<BrokenFile> broken)
    {
        try
        {
            return Manifest.Open(disk);
        }
        catch (Exception exception) when (exception is InvalidDataException or JsonException)
        {
            broken.Add(new BrokenFile(Manifest.FileName, exception.Message));
            if (setAside)
            {
                disk.Quarantine(Manifest.FileName);
            }

            return Manifest.Empty(disk);
        }
    }

    private void Each(Action<RecordShelf> work)
    {
        foreach (RecordShelf shelf in new[] { Ticks, Minutes, Lasting })
        {
            work(shelf);
        }
    }
}
