using PileController.Records.Accounts;
using PileController.Settings;

namespace PileController.Ledgers.Counting;

/// <summary>Asks a record what its blocks came to: those after a number, at most so many, held against rules by the hash of the settings.</summary>
internal delegate Task<IReadOnlyList<BlockAccount>> AskAccounts(long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf);

/// <summary>Counts a record into a book.</summary>
/// <param name="kept">Finds the settings ticks were made with, by their hash.</param>
/// <param name="given">The settings that count instead of those that were not found, or null.</param>
/// <threadsafety>One count at a time.</threadsafety>
internal sealed class BookCounting(Func<string, PileSettings?> kept, PileSettings? given)
{
    // Two days of hours: the record's thread has other questions to answer and ticks to write.
    private const int BlocksAtATime = 48;
    private readonly Dictionary<string, (PileSettings Settings, AccountRules Rules)> _known = [];

    /// <summary>The book with what was recorded since.</summary>
    /// <param name="book">The book as it was kept.</param>
    /// <param name="lastSequence">Last tick of the record, or 0.</param>
    /// <param name="accounts">Asks the record.</param>
    public async Task<LedgerView> CountAsync(Book book, long lastSequence, AskAccounts accounts)
    {
        // A record that ends before what was counted is another one: it is counted from its beginning.
        Edge? from = book.CountedTo is { } edge && edge.Sequence <= lastSequence ? edge : null;
        DayCounting counting = new(from, RulesOf);
        long after = from?.Sequence ?? 0;
        IReadOnlyList<BlockAccount> blocks;
        do
        {
            blocks = await accounts(after, BlocksAtATime, RulesOf).ConfigureAwait(false);
            foreach (BlockAccount block in blocks)
            {
                counting.Add(block);
                after = block.LastSequence;
            }
        }
        while (blocks.Count == BlocksAtATime);

        Book counted = counting.Over.Count == 0 ? book : book with { CountedTo = counting.OverTo, Days = [.. book.Days, .. counting.Over] };
        return new LedgerView(counted, counting.Now, given ?? KnownOf(counting.SettingsHash ?? "").Settings);
    }

    private AccountRules RulesOf(string hash) => KnownOf(hash).Rules;

    // Called from the record's thread too, yet only while a count waits for it.
    private (PileSettings Settings, AccountRules Rules) KnownOf(string hash)
    {
        if (!_known.TryGetValue(hash, out (PileSettings Settings, AccountRules Rules) known))
        {
            PileSettings settings = kept(hash) ?? given ?? PileSettings.AlderBank;
            _known[hash] = known = (settings, LedgerRules.Of(settings));
        }

        return known;
    }
}
