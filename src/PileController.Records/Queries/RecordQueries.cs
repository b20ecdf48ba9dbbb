using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Records.Accounts;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Queries;

/// <summary>Answers questions from a list of batches. A damaged batch is left out and told.</summary>
internal static class RecordQueries
{
    /// <summary>A series; see <see cref="IPileRecord.SamplesAsync"/>.</summary>
    public static IReadOnlyList<SeriesPoint> Samples(
        IEnumerable<StoredBatch> batches, BlockCache cache, string series, TimeRange range, long stepMilliseconds,
        Action<string> tellDamage)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stepMilliseconds);
        SeriesReader reader = new(series);
        SeriesBuckets buckets = new(stepMilliseconds);
        foreach (StoredBatch stored in batches.Where(range.Touches))
        {
            Guard(stored, tellDamage, () =>
            {
                PackedBatch batch = cache.Open(stored);
                long[] utc = batch.Column(TickColumns.Utc);
                double[] values = reader.Values(batch);
                for (int row = 0; row < utc.Length; row++)
                {
                    if (range.Holds(utc[row]))
                    {
                        buckets.Add(utc[row], values[row]);
                    }
                }
            });
        }

        return buckets.Points();
    }

    /// <summary>Decision lines, newest first; see <see cref="IPileRecord.DecisionsAsync"/>.</summary>
    public static IReadOnlyList<DecisionLine> Decisions(
        IEnumerable<StoredBatch> batches, TimeRange range, DecisionKinds? kinds, int limit, Action<string> tellDamage)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(limit);
        DecisionKinds wanted = kinds ?? (DecisionKinds)(-1);
        List<DecisionLine> lines = [];
        foreach (StoredBatch stored in batches.Where(range.Touches).Where(b => (b.Head.Kinds & wanted) != 0).Reverse())
        {
            if (lines.Count >= limit)
            {
                break;
            }

            Guard(stored, tellDamage, () => lines.AddRange(stored.Lines()
                .Where(line => (line.Kinds & wanted) != 0 && range.Holds(line.UtcMilliseconds))
                .Reverse()));
        }

        return lines.Count > limit ? lines[..limit] : lines;
    }

    /// <summary>Accounts of blocks in order; see <see cref="IPileRecord.AccountsAsync"/>.</summary>
    public static IReadOnlyList<BlockAccount> Accounts(
        IEnumerable<StoredBatch> batches, BlockCache cache, long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf,
        Action<string> tellDamage)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(mostBlocks, 1);
        List<BlockAccount> accounts = [];
        foreach (StoredBatch stored in batches.Where(b => b.Head.LastSequence > afterSequence))
        {
            if (accounts.Count >= mostBlocks)
            {
                break;
            }

            Guard(stored, tellDamage, () => accounts.Add(BlockAccounting.Of(cache.Open(stored), afterSequence, rulesOf)));
        }

        return accounts;
    }

    private static void Guard(StoredBatch stored, Action<string> tellDamage, Action work)
    {
        try
        {
            work();
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is IOException or JsonException)
        {
            tellDamage($"Tick {stored.Head.FirstSequence} to {stored.Head.LastSequence} in '{stored.Where}': {exception.Message}");
        }
    }
}
