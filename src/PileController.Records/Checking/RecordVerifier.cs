using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Records.Backups;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>
/// Checks a record: every checksum, every column, every sequence, every decision line against its tick, every summary
/// against its ticks where those are still kept.
/// </summary>
public static class RecordVerifier
{
    /// <summary>Checks a record, or a backup of one with all its files.</summary>
    /// <param name="dataDirectory">Its folder.</param>
    /// <exception cref="RecordInUseException">It is being changed without a pause.</exception>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    public static VerifyReport Check(string dataDirectory)
    {
        using RecordReader reader = RecordReader.Open(dataDirectory);
        return Check(reader.Contents, [.. reader.Problems, .. ManifestProblems(dataDirectory)]);
    }

    internal static VerifyReport Check(RecordContents contents, IReadOnlyList<string> before)
    {
        List<string> problems = [.. before];
        foreach (RecordFile file in contents.Store.Files)
        {
            try
            {
                file.CheckSum();
            }
            catch (Exception exception) when (exception is InvalidDataException or IOException)
            {
                problems.Add($"'{file.Name}': {exception.Message}");
            }
        }

        VerifyReport ticks = Check(contents.Batches(TimeRange.All, problems.Add).ToList(), []);
        int days = new DayVerifier(contents, problems.Add).Check();
        return ticks with { Problems = [.. problems.Concat(ticks.Problems).Distinct()], Days = days };
    }

    internal static VerifyReport Check(IEnumerable<StoredBatch> batches, IReadOnlyList<string> before)
    {
        List<string> problems = [.. before];
        Tally tally = new();
        foreach (StoredBatch stored in batches)
        {
            string where = $"Tick {stored.Head.FirstSequence} to {stored.Head.LastSequence} in '{stored.Where}'";
            if (tally.Blocks > 0 && stored.Head.FirstSequence != tally.Last + 1)
            {
                problems.Add($"{where}: the tick before it is {tally.Last}; {stored.Head.FirstSequence - tally.Last - 1} are missing.");
            }

            tally.Add(stored.Head);
            try
            {
                tally.Lines += CheckOne(stored, problem => problems.Add($"{where}: {problem}"));
            }
            catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException or IOException)
            {
                problems.Add($"{where}: {exception.Message}");
            }
        }

        return new VerifyReport(tally.Blocks, tally.Ticks, tally.Lines, tally.First, tally.Last, problems);
    }

    private static IEnumerable<string> ManifestProblems(string dataDirectory)
    {
        if (!BackupManifest.IsIn(dataDirectory))
        {
            return [];
        }

        try
        {
            return [.. BackupManifest.Read(dataDirectory).Problems(dataDirectory)];
        }
        catch (InvalidDataException exception)
        {
            return [exception.Message];
        }
    }

    private static int CheckOne(StoredBatch stored, Action<string> tell)
    {
        PackedBatch batch = stored.Batch();
        long[][] columns = [.. Enumerable.Range(0, TickColumns.Count).Select(batch.Column)];
        BatchHead counted = BatchHead.Of(batch.FirstSequence, columns[TickColumns.Utc], columns[TickColumns.Kinds]);
        if (counted != batch.Head || counted != stored.Head)
        {
            tell("its head does not agree with its ticks.");
        }

        BatchText text = batch.Text();
        if (text.Commands.Any(command => command.Row < 0 || command.Row >= batch.Count))
        {
            tell("a command belongs to none of its ticks.");
        }

        if (text.IsAnyLost)
        {
            tell("a memory went with a damaged frame of the tail; its ticks are there and cannot be decided again.");
        }

        IReadOnlyList<DecisionLine> lines = stored.Lines();
        CheckLines(batch, columns, lines, tell);
        return lines.Count;
    }

    private static void CheckLines(PackedBatch batch, long[][] columns, IReadOnlyList<DecisionLine> lines, Action<string> tell)
    {
        Dictionary<long, DecisionLine> bySequence = [];
        foreach (DecisionLine line in lines)
        {
            if (!bySequence.TryAdd(line.Sequence, line))
            {
                tell($"tick {line.Sequence} has two decision lines.");
            }
        }

        for (int row = 0; row < batch.Count; row++)
        {
            long sequence = batch.FirstSequence + row;
            var kinds = (DecisionKinds)columns[TickColumns.Kinds][row];
            bool found = bySequence.Remove(sequence, out DecisionLine? line);
            if (found != (kinds != DecisionKinds.Steady))
            {
                tell(found ? $"tick {sequence} is steady and has a decision line." : $"the decision line of tick {sequence} is missing.");
            }
            else if (found && (line!.Kinds != kinds || line.UtcMilliseconds != columns[TickColumns.Utc][row]
                || (long)line.Mode != columns[TickColumns.Mode][row]))
            {
                tell($"the decision line of tick {sequence} does not agree with it.");
            }
        }

        if (bySequence.Count > 0)
        {
            tell($"{bySequence.Count} decision lines belong to none of its ticks.");
        }
    }

    private sealed class Tally
    {
        public int Blocks { get; private set; }

        public long Ticks { get; private set; }

        public long Lines { get; set; }

        public long First { get; private set; }

        public long Last { get; private set; }

        public void Add(BatchHead head)
        {
            First = Blocks == 0 ? head.FirstSequence : First;
            Blocks++;
            Ticks += head.Count;
            Last = head.LastSequence;
        }
    }
}
