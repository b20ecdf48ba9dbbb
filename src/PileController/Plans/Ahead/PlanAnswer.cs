using PileController.Ledgers;
using PileController.Plans.Money;
using PileController.Plans.Sketch;
using PileController.Settings;

namespace PileController.Plans.Ahead;

/// <summary>All that a plan of the season ahead tells. Names are those of the JSON; SI, unit in the key.</summary>
/// <param name="Seasons">How many seasons were run.</param>
/// <param name="Seed">Seed of all that was drawn.</param>
/// <param name="Days">How long each season is.</param>
/// <param name="Winters">The winters they were run on, in turn.</param>
/// <param name="Sketch">What can be said of the holding without the controller, on the first of the winters.</param>
/// <param name="Ahead">What they came to.</param>
/// <param name="Money">What that is in money.</param>
/// <param name="Wish">The wish beside it, or null when there is none.</param>
/// <param name="Lessons">What the last closed season taught of heap and house, offered and not applied; null when none was asked for.</param>
internal sealed record PlanAnswer(
    int Seasons, long Seed, int Days, IReadOnlyList<WinterName> Winters, PlanSketch Sketch, AheadResult Ahead, MoneyResult Money,
    WishVerdict? Wish, Lessons? Lessons)
{
    /// <summary>Sums up what the seasons of a request came to, beside the sketch of its holding.</summary>
    public static PlanAnswer Of(AheadRequest request, PlanSketch sketch, IReadOnlyList<SeasonOutcome> outcomes, Lessons? lessons = null)
    {
        PlanSettings plan = request.Settings.Plan;
        AheadResult ahead = AheadResult.Of(outcomes, request.Days);
        return new PlanAnswer(
            request.Seasons, request.Seed, request.Days, [.. request.Winters.Select(w => new WinterName(w.File, w.Start))],
            sketch, ahead, MoneyResult.Of(plan.Prices, plan.Parts, outcomes), WishVerdict.Of(plan.Wish, ahead), lessons);
    }
}

/// <summary>A winter by its file and first day.</summary>
internal sealed record WinterName(string File, DateOnly Start);
