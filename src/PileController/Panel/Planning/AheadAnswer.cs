using PileController.Plans.Ahead;
using PileController.Plans.Money;

namespace PileController.Panel.Planning;

/// <summary>What a run of seasons came to, for the page. SI, the unit in the key.</summary>
/// <param name="Seasons">How many were run.</param>
/// <param name="Days">How long each was.</param>
/// <param name="Seed">Seed of all that was drawn.</param>
/// <param name="Ahead">What they came to.</param>
/// <param name="Money">What that is in money.</param>
/// <param name="Wish">The wish beside it, or null when there is none.</param>
internal sealed record AheadAnswer(int Seasons, int Days, long Seed, AheadResult Ahead, MoneyResult Money, WishVerdict? Wish)
{
    /// <summary>Sums up a run.</summary>
    public static AheadAnswer Of(AheadRequest request, IReadOnlyList<SeasonOutcome> outcomes)
    {
        AheadResult ahead = AheadResult.Of(outcomes, request.Days);
        return new AheadAnswer(
            request.Seasons, request.Days, request.Seed, ahead,
            MoneyResult.Of(request.Settings.Plan.Prices, request.Settings.Plan.Parts, outcomes), WishVerdict.Of(request.Settings.Plan.Wish, ahead));
    }
}
