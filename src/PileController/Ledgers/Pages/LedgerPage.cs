using PileController.Ledgers.Counting;

namespace PileController.Ledgers.Pages;

/// <summary>The book opened at one season, or at the days alone when there is none. Names are those of the JSON.</summary>
/// <param name="Season">The season; null when the book holds none.</param>
/// <param name="Seasons">Names of all seasons, oldest first.</param>
/// <param name="Total">What all its days came to.</param>
/// <param name="Months">What each month came to.</param>
/// <param name="Days">What each day came to; the last one may still run.</param>
/// <param name="Running">The date that still runs; null when none does.</param>
/// <param name="Money">What it saved; null without a season.</param>
/// <param name="ReadThus">How the figures are to be read.</param>
internal sealed record LedgerPage(
    SeasonEntry? Season, IReadOnlyList<string> Seasons, SpanSum Total, IReadOnlyList<SpanSum> Months, IReadOnlyList<SpanSum> Days,
    DateOnly? Running, SeasonMoney? Money, IReadOnlyList<string> ReadThus)
{
    /// <summary>How the figures are to be read, whatever they are.</summary>
    public static IReadOnlyList<string> Reading { get; } =
    [
        "The error band of the heat by water is that of meter and probe pair, added up over all ticks without cancelling: the truth lies closer more often than not.",
        "Heat by air has no meter of its own: it is reckoned from the blower's full flow and two probes, and has no error band here.",
        "Inferred hours are those in which flow, supply or return was not measured: the heat of them is reckoned from what the pump was told.",
        "A day is counted between the recorded ticks nearest to its two midnights at which the running totals were kept; nothing is interpolated.",
        "A night runs from midnight to 09:00; one is kept when the house never read below its minimum in it, whatever other heat there was.",
    ];

    /// <summary>Opens the book.</summary>
    /// <param name="view">The book.</param>
    /// <param name="season">The season; null for the days alone.</param>
    public static LedgerPage Of(LedgerView view, SeasonEntry? season)
    {
        IReadOnlyList<DayEntry> days = season is null ? view.Days : view.DaysOf(season);
        SpanSum total = SpanSum.Of(season?.Name ?? "all days", days);
        DateOnly? running = view.Now is { } now && days.Contains(now) ? now.Date : null;
        return new LedgerPage(
            season, [.. view.Book.Seasons.Select(s => s.Name)], total, SpanSum.ByMonth(days), SpanSum.ByDay(days), running,
            season is null ? null : SeasonMoney.Of(season, total), Reading);
    }
}
