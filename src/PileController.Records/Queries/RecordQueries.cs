using System.Text.Json;
using PileController.Records.Accounts;
using PileController.Records.Keeping;
using PileController.Records.Storage;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>Answers questions from what a record holds. A damaged part is left out and told.</summary>
internal static class RecordQueries
{
    /// <summary>Some series; see <see cref="IPileRecord.SamplesAsync"/>.</summary>
    public static IReadOnlyList<IReadOnlyList<SeriesPoint>> Samples(
        RecordContents contents, QueryCache cache, IReadOnlyList<string> series, TimeRange range, long stepMilliseconds,
        Action<string> tellDamage)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stepMilliseconds);
        return new SamplesQuery(contents, cache, range, stepMilliseconds, tellDamage).Answer([.. series.Select(SummarySeries.Find)]);
    }

    /// <summary>Decision lines, newest first; see <see cref="IPileRecord.DecisionsAsync"/>.</summary>
    public static IReadOnlyList<DecisionLine> Decisions(
        RecordContents contents, QueryCache cache, DecisionAsk ask, Action<string> tellDamage) =>
        new DecisionsQuery(contents, cache, ask, tellDamage).Answer();

    /// <summary>Accounts of blocks in order; see <see cref="IPileRecord.AccountsAsync"/>.</summary>
    public static IReadOnlyList<BlockAccount> Accounts(
        IEnumerable<StoredBatch> batches, QueryCache cache, long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf,
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

            Guard(stored, tellDamage, () => accounts.Add(BlockAccounting.Of(cache.Ticks(stored), afterSequence, rulesOf)));
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
