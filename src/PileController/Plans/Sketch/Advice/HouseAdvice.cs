using PileController.Units;

namespace PileController.Plans.Sketch.Advice;

/// <summary>What the house can save, beside which a heap's gains are to be seen.</summary>
internal static class HouseAdvice
{
    public static IEnumerable<PlanWords> Of(SketchTrials trials, HouseLoad load)
    {
        double seasonKWh = load.SeasonKWh(trials.Settings.House);
        double designW = load.DesignWatts(trials.Settings.House, trials.Settings.Control.HouseNightC);
        foreach (HouseChange change in HouseChange.For(trials.Settings.House))
        {
            SketchWhatIf after = HouseSketching.WhatIf(trials, load, change);
            double savedKWh = seasonKWh - after.SeasonLossKWh;
            double watts = 1000 * savedKWh / (24.0 * trials.Days);
            double nightW = designW - after.DesignLossWatts;
            double most = Math.Max(watts, change.NightStoreWatts);
            string worth = Say.Worth(most, trials.Base.DrawnWatts);
            yield return Say.Both(
                change.Kind,
                u => savedKWh > 0
                    ? $"{Capital(change.Name(u))} saves {Show.Power(watts, u)} on the season's mean ({PlanShow.Heat(savedKWh, u)}) and "
                        + $"{Show.Power(nightW, u)} on the design night{worth}."
                    : $"{Capital(change.Name(u))} saves nothing over the season, since it takes back by day what it gives, but gives {Show.Power(nightW, u)} on the design night{worth}.",
                watts, Say.IsWorth(most, trials.Base.DrawnWatts));
        }
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
