namespace PileController.Access;

/// <summary>
/// Folds what is refused again and again into one line a minute, so that a storm can fill neither the card nor what
/// people read. What is done is never folded.
/// </summary>
internal sealed class JournalFold
{
    private const long WindowMilliseconds = 60_000;
    private const int MostWindows = 32;
    private const int Shown = 200;
    private const string Many = "many addresses";

    private readonly Dictionary<(string From, string What, int Status), Row> _open = [];
    private readonly Queue<Row> _done = [];
    private readonly Queue<Row> _refused = [];

    /// <summary>Takes one in, and gives the line to be written, if it is to be written now.</summary>
    public JournalEntry? Add(JournalEntry entry)
    {
        if (entry.Done)
        {
            Show(_done, new Row(entry));
            return entry;
        }

        (string From, string What, int Status) key = (entry.From, entry.What, entry.Status);
        if (!_open.ContainsKey(key) && _open.Count >= MostWindows)
        {
            entry = entry with { From = Many, What = "various", Who = null, By = null };
            key = (Many, entry.What, 0);
        }

        if (_open.TryGetValue(key, out Row? open))
        {
            open.Entry = open.Entry with { Times = open.Entry.Times + 1 };
            return null;
        }

        Row row = new(entry);
        _open[key] = row;
        Show(_refused, row);
        return entry;
    }

    /// <summary>Closes the windows that are over, and gives the lines that sum up what was folded.</summary>
    public IReadOnlyList<JournalEntry> Close(long nowUtcMilliseconds)
    {
        KeyValuePair<(string From, string What, int Status), Row>[] over =
            [.. _open.Where(w => Math.Abs(nowUtcMilliseconds - w.Value.Entry.AtUtcMilliseconds) >= WindowMilliseconds)];
        foreach (var window in over)
        {
            _open.Remove(window.Key);
        }

        return [.. over.Select(w => w.Value.Entry).Where(e => e.Times > 1)];
    }

    /// <summary>The newest first.</summary>
    public IReadOnlyList<JournalEntry> Newest(int most) =>
        [.. _done.Concat(_refused).Select(r => r.Entry).OrderByDescending(e => e.AtUtcMilliseconds).Take(most)];

    private static void Show(Queue<Row> rows, Row row)
    {
        rows.Enqueue(row);
        if (rows.Count > Shown)
        {
            rows.Dequeue();
        }
    }

    private sealed class Row(JournalEntry entry)
    {
        public JournalEntry Entry { get; set; } = entry;
    }
}
