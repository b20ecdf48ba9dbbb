using PileController.Ledgers.Counting;

namespace PileController.Ledgers.Pages;

/// <summary>One season as it stands beside others. Names are those of the JSON.</summary>
/// <param name="Name">Its name.</param>
/// <param name="HeapBuiltOn">When its heap was built.</param>
/// <param name="ClosedOn">When it was closed; null while it is open.</param>
/// <param name="Total">What its days came to.</param>
/// <param name="Money">What it saved, by an estimate.</param>
/// <param name="MassInKg">Wet mass in; null when not entered.</param>
/// <param name="MassOutKg">Mass out; null when not entered.</param>
/// <param name="Fading">How its heap came to its end.</param>
internal sealed record SeasonBeside(
    string Name, DateOnly HeapBuiltOn, DateOnly? ClosedOn, SpanSum Total, SeasonMoney Money, double? MassInKg, double? MassOutKg, Fading Fading)
{
    /// <summary>All seasons of a book, oldest first.</summary>
    public static IReadOnlyList<SeasonBeside> All(LedgerView view) => [.. view.Book.Seasons.Select(season => Of(view, season))];

    private static SeasonBeside Of(LedgerView view, SeasonEntry season)
    {
        IReadOnlyList<DayEntry> days = view.DaysOf(season);
        SpanSum total = SpanSum.Of(season.Name, days);
        return new SeasonBeside(
            season.Name, season.HeapBuiltOn, season.Closed?.On, total, SeasonMoney.Of(season, total), season.Mass(MassWay.In)?.Kilograms,
            season.Mass(MassWay.Out)?.Kilograms, season.Closed?.Lessons?.Fading ?? Fading.Of(days));
    }
}
