using LiteDB;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// The heads of a file's entries, as far back as anybody has asked. A head lies with its entry, so that reading all of
/// them reads the file whole; to go on writing, what the file spans is enough.
/// </summary>
/// <param name="file">Name of the file, for messages.</param>
/// <param name="collection">The collection that has them.</param>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class FileHeads(string file, string collection)
{
    private readonly List<BatchHead> _heads = [];
    private readonly Dictionary<long, LineMarks> _marks = [];

    // Every entry with a tick after this number is known; while nothing is, none.
    private long _knownAfter = long.MaxValue;

    /// <summary>What the file holds.</summary>
    public FileSpan Span { get; private set; }

    /// <summary>Whether <see cref="Span"/> is known.</summary>
    public bool IsSpanKnown => _knownAfter < long.MaxValue;

    /// <summary>Whether every entry with a tick after a number is known.</summary>
    public bool AreKnownAfter(long sequence) => _knownAfter <= sequence;

    /// <summary>The known entries with a tick after a number, in order.</summary>
    public IReadOnlyList<BatchHead> After(long sequence) =>
        sequence < Span.FirstSequence ? _heads : [.. _heads.SkipWhile(head => head.LastSequence <= sequence)];

    /// <summary>What the decision lines of a known entry are marked with.</summary>
    public LineMarks MarksOf(long firstSequence) => _marks.GetValueOrDefault(firstSequence, LineMarks.Unknown);

    /// <summary>Takes up an entry that was written after all others.</summary>
    public void Add(BatchHead head, LineMarks marks)
    {
        Note(head, marks);
        Span = Span.With(head);
    }

    /// <summary>Reads all of them. What was known stays when that fails.</summary>
    /// <param name="database">The open file.</param>
    /// <param name="expected">What the file has to hold; null when nobody knows.</param>
    /// <exception cref="InvalidDataException">They do not follow each other, or are not what the file has to hold.</exception>
    public void ReadAll(LiteDatabase database, FileSpan? expected)
    {
        List<(BatchHead Head, LineMarks Marks)> all = InOrder([.. Newest(database)]);
        FileSpan span = all.Aggregate(default(FileSpan), (span, entry) => span.With(entry.Head));
        if (expected is { } other && other != span)
        {
            throw new InvalidDataException($"'{file}' does not hold what was noted when it was closed.");
        }

        Take(all, knownAfter: 0);
        Span = span;
    }

    /// <summary>Reads those with a tick after a number.</summary>
    /// <exception cref="InvalidDataException">They do not follow each other.</exception>
    public void ReadAfter(LiteDatabase database, long sequence)
    {
        if (sequence < Span.FirstSequence)
        {
            ReadAll(database, null);
        }
        else
        {
            Take(InOrder([.. Newest(database).TakeWhile(entry => entry.Head.LastSequence > sequence)]), sequence);
        }
    }

    /// <summary>
    /// Goes on from what the file once held for certain, and reads what came after. False when it does not lie in the file
    /// any more, as in one that was put back.
    /// </summary>
    /// <exception cref="InvalidDataException">The entries do not follow each other.</exception>
    public bool TryGoOn(LiteDatabase database, FileSpan noted)
    {
        List<(BatchHead Head, LineMarks Marks)> newer = [];
        BatchHead last = default;
        foreach ((BatchHead head, LineMarks marks) in Newest(database))
        {
            last = head;
            if (head.LastSequence <= noted.LastSequence)
            {
                break;
            }

            newer.Add((head, marks));
        }

        if (last.Count < 1 || last.LastSequence != noted.LastSequence || FirstSequence(database) != noted.FirstSequence)
        {
            return false;
        }

        Take(InOrder(newer), noted.LastSequence);
        Span = _heads.Aggregate(noted, (span, head) => span.With(head));
        return true;
    }

    private List<(BatchHead Head, LineMarks Marks)> InOrder(List<(BatchHead Head, LineMarks Marks)> newestFirst)
    {
        newestFirst.Reverse();
        long before = 0;
        foreach ((BatchHead head, _) in newestFirst)
        {
            if (head.Count < 1 || head.FirstSequence <= before)
            {
                throw new InvalidDataException($"The entry of tick {head.FirstSequence} in '{file}' overlaps the one before.");
            }

            before = head.LastSequence;
        }

        return newestFirst;
    }

    private void Take(List<(BatchHead Head, LineMarks Marks)> entries, long knownAfter)
    {
        _heads.Clear();
        _marks.Clear();
        entries.ForEach(entry => Note(entry.Head, entry.Marks));
        _knownAfter = knownAfter;
    }

    private void Note(BatchHead head, LineMarks marks)
    {
        _heads.Add(head);
        if (marks != LineMarks.Unknown)
        {
            _marks[head.FirstSequence] = marks;
        }
    }

    private IEnumerable<(BatchHead Head, LineMarks Marks)> Newest(LiteDatabase database) =>
        database.GetCollection(collection).Query().OrderByDescending("_id").Select(EntryDocument.HeadFields).ToEnumerable()
            .Select(document => (EntryDocument.Head(document), EntryDocument.Marks(document)));

    // Asked for its number alone no entry is read, only the index.
    private long FirstSequence(LiteDatabase database) =>
        database.GetCollection(collection).Query().OrderBy("_id").Select("{_id}").ToEnumerable()
            .Select(document => document["_id"].AsInt64).FirstOrDefault();
}
