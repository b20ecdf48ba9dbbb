using PileController.Physics.Plants;
using PileController.Units;

namespace PileController.Plans.Sketch.Advice;

/// <summary>What water the heap loses, and when and how it is given back.</summary>
internal static class WettingAdvice
{
    // The lower end of the ideal 50 to 60 % (The Composting Handbook, 2021).
    private const double HeldMoisture = 0.50;

    private const string How =
        "Plain water, a little each day, by a soaker hose under the cover, never as spray and never on a heap below its floor: "
        + "a cold drench can put a heap out, and the warm water of tank and drum breeds what should not be breathed.";

    public static IEnumerable<PlanWords> Of(SketchTrials trials)
    {
        HeapTrialResult trial = trials.Base;
        double end = trial.Weeks[^1].MoistureFraction;
        double least = trial.Weeks.Min(w => w.MoistureFraction);
        if (least >= HeldMoisture)
        {
            yield return Say.Both(
                "rewetting",
                u => $"The heap loses {Show.Mass(trial.WaterLostKg, u)} of water by the season's end but burns dry matter too, so that its moisture "
                    + $"never falls below {100 * least:F0} % (end: {100 * end:F0} %): no wetting is needed by this reckoning. Feel a handful at the turns "
                    + "once a month; it should be as damp as a wrung-out sponge.");
            yield break;
        }

        HeapTrialResult wetted = Wetted(trials);
        double gain = trials.GainWatts(wetted);
        TrialWeek[] weeks = [.. wetted.Weeks.Where(w => w.WettedKg > 0)];
        if (weeks.Length == 0)
        {
            yield break;
        }

        double mostADay = weeks.Max(w => w.WettedKg / w.Days);
        string when = trial.DriesOnDay is double dry
            ? $"without it the heap falls below 40 % on day {dry:F0}"
            : $"without it the heap falls to {100 * least:F0} %";
        yield return Say.Both(
            "rewetting",
            u => $"Give {Show.Volume(wetted.WettedKg, u)} of water back from week {weeks[0].Week} to week {weeks[^1].Week}, at most "
                + $"{Show.Volume(mostADay, u)} a day; {when}. It {Say.Gain(gain, u)}{Say.Worth(gain, trial.DrawnWatts)}. {How}",
            gain);
    }

    public static HeapTrialResult Wetted(SketchTrials trials) =>
        trials.Run(trials.Settings.Heap, trials.Draw with { HeldMoisture = HeldMoisture });
}
