using System.Text.Json;

namespace PileController.Access;

/// <summary>The journal of access. A request never waits for the card.</summary>
/// <threadsafety>Safe from any thread; one thread writes.</threadsafety>
internal sealed class AccessJournal(string folder, TimeProvider clock) : IDisposable
{
    /// <summary>Plain name of the file.</summary>
    public const string Name = "access.jsonl";

    /// <summary>The file before.</summary>
    public const string OldName = "access-old.jsonl";

    // Some two thousand lines; with the file before it no more than twice that ever lies on the card.
    private const long MostBytes = 256 * 1024;

    // What a card that takes nothing may cost in memory.
    private const int MostUnwritten = 1000;
    private const int LongestText = 160;
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    private readonly Lock _gate = new();
    private readonly JournalFold _fold = new();
    private readonly SemaphoreSlim _news = new(0, 1);
    private List<JournalEntry> _unwritten = [];

    /// <summary>Takes in what somebody did or was refused.</summary>
    public void Add(string? who, string from, string? by, string what, bool done, int status, string? why)
    {
        JournalEntry entry = new(Now, Cut(who), from, by, Cut(what)!, done, status, Cut(why));
        lock (_gate)
        {
            if (_fold.Add(entry) is not { } line)
            {
                return;
            }

            _unwritten.Add(line);
            if (_news.CurrentCount == 0)
            {
                _news.Release();
            }
        }
    }

    /// <summary>The newest first.</summary>
    public IReadOnlyList<JournalEntry> Newest(int most)
    {
        lock (_gate)
        {
            return _fold.Newest(most);
        }
    }

    /// <summary>Waits until there is something to write, a while at most.</summary>
    public Task WaitAsync(TimeSpan most, CancellationToken cancellation) => _news.WaitAsync(most, cancellation);

    /// <summary>Shows again what earlier runs wrote.</summary>
    public void Load()
    {
        foreach (string line in new[] { OldName, Name }.SelectMany(Lines))
        {
            try
            {
                if (JsonSerializer.Deserialize<JournalEntry>(line, Json) is { } entry)
                {
                    lock (_gate)
                    {
                        _fold.Add(entry);
                        _fold.Close(long.MaxValue / 2);
                    }
                }
            }
            catch (JsonException)
            {
                // A line cut off by a pulled plug.
            }
        }
    }

    /// <summary>Writes what is not written yet.</summary>
    /// <exception cref="IOException">It cannot be written now; it is tried again next time.</exception>
    public void Write()
    {
        List<JournalEntry> lines;
        lock (_gate)
        {
            lines = [.. _unwritten, .. _fold.Close(Now)];
            _unwritten = [];
        }

        if (lines.Count == 0)
        {
            return;
        }

        try
        {
            Append(lines);
        }
        catch (Exception)
        {
            lock (_gate)
            {
                _unwritten = [.. lines.Concat(_unwritten).TakeLast(MostUnwritten)];
            }

            throw;
        }
    }

    private void Append(List<JournalEntry> lines)
    {
        string path = Path.Combine(folder, Name);
        if (File.Exists(path) && new FileInfo(path).Length > MostBytes)
        {
            File.Move(path, Path.Combine(folder, OldName), overwrite: true);
        }

        using FileStream stream = new(path, FileMode.Append, FileAccess.Write, FileShare.Read);
        foreach (JournalEntry line in lines)
        {
            stream.Write(JsonSerializer.SerializeToUtf8Bytes(line, Json));
            stream.WriteByte((byte)'\n');
        }

        stream.Flush(flushToDisk: true);
    }

    /// <inheritdoc/>
    public void Dispose() => _news.Dispose();

    private long Now => clock.GetUtcNow().ToUnixTimeMilliseconds();

    private static string? Cut(string? text) =>
        text is null ? null : string.Concat(text.EnumerateRunes().Where(rune => !TypedText.IsHidden(rune)).Take(LongestText));

    private string[] Lines(string name)
    {
        try
        {
            return File.ReadAllLines(Path.Combine(folder, name));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
