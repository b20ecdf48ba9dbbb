using PileController.Control;
using PileController.Ledgers.Counting;
using PileController.Records;
using PileController.Settings;

namespace PileController.Ledgers;

/// <summary>The book as it stands with the day that still runs.</summary>
/// <param name="Book">The book, with all days that are over.</param>
/// <param name="Now">The day that still runs, so far; null when nothing was recorded since.</param>
/// <param name="Settings">The settings of the holding.</param>
internal sealed record LedgerView(Book Book, DayEntry? Now, PileSettings Settings)
{
    /// <summary>All stretches, the running one included.</summary>
    public IReadOnlyList<DayEntry> Days => Now is null ? Book.Days : [.. Book.Days, Now];

    /// <summary>The stretches of a season.</summary>
    public IReadOnlyList<DayEntry> DaysOf(SeasonEntry season) => [.. Days.Where(d => season.Holds(d.Date))];
}

/// <summary>Keeps the book: counts the record into it and makes every change, one after another.</summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class LedgerDesk(string folder, IPileRecord record, Func<string, PileSettings?> kept, PileSettings? given) : IDisposable
{
    private readonly BookFile _file = new(folder);
    private readonly SemaphoreSlim _one = new(1);
    private readonly BookCounting _counting = new(kept, given);

    /// <summary>The book with what was recorded since; writes nothing.</summary>
    /// <exception cref="BookFileException">The book cannot be read.</exception>
    public Task<LedgerView> LookAsync(CancellationToken cancellation) => InTurnAsync(() => CountAsync(_file.Read(), cancellation), cancellation);

    /// <summary>Keeps the days that are over.</summary>
    /// <exception cref="IOException">The book cannot be read or written, or the record fails.</exception>
    public Task<LedgerView> KeepAsync(CancellationToken cancellation) => EditAsync((view, _) => view.Book, cancellation);

    /// <summary>Keeps the days that are over and makes a change.</summary>
    /// <param name="change">Gives the new book from the one that stands and what control remembers (null before its first tick).</param>
    /// <param name="cancellation">Gives it up.</param>
    /// <exception cref="IOException">The book cannot be read or written, or the record fails.</exception>
    public Task<LedgerView> EditAsync(Func<LedgerView, Memory?, Book> change, CancellationToken cancellation) => InTurnAsync(
        async () =>
        {
            // A day is kept only when its ticks are safe: a number that was lost would be given to another tick.
            await record.FlushAsync(cancellation).ConfigureAwait(false);
            Book before = _file.Read();
            LedgerView view = await CountAsync(before, cancellation).ConfigureAwait(false);
            Book after = change(view, await record.LastMemoryAsync(cancellation).ConfigureAwait(false));
            if (after != before)
            {
                _file.Write(after);
            }

            return view with { Book = after };
        },
        cancellation);

    /// <inheritdoc/>
    public void Dispose() => _one.Dispose();

    private Task<LedgerView> CountAsync(Book book, CancellationToken cancellation) => _counting.CountAsync(
        book, record.Health.LastSequence, (after, most, rulesOf) => record.AccountsAsync(after, most, rulesOf, cancellation));

    private async Task<T> InTurnAsync<T>(Func<Task<T>> work, CancellationToken cancellation)
    {
        await _one.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            return await work().ConfigureAwait(false);
        }
        finally
        {
            _one.Release();
        }
    }
}
