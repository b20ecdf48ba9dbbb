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
        string Lost(UnitSystem u) =>
            $"The heap loses {Show.Mass(trials.Base.WaterLostKg, u)} of water by the season's end when all it bears is drawn, "
            + $"{Show.Mass(trials.Undrawn.WaterLostKg, u)} when nothing is.";
        if (Math.Min(Least(trials.Base), Least(trials.Undrawn)) >= HeldMoisture)
        {
            yield return Say.Both(
                "rewetting",
                u => $"{Lost(u)} It burns dry matter too, so that its moisture stays above {100 * Least(trials.Undrawn):F0} %: no wetting is needed "
                    + "by this reckoning. Feel a handful at the turns once a month; it should be as damp as a wrung-out sponge.");
            yield break;
        }

        // The drier of the two is what there may be to give back.
        bool drawnDries = Least(trials.Base) < Least(trials.Undrawn);
        HeapTrialResult dry = drawnDries ? trials.Base : trials.Undrawn;
        HeapTrialResult wetted = Wetted(trials, drawnDries);
        TrialWeek[] weeks = [.. wetted.Weeks.Where(w => w.WettedKg > 0)];
        if (weeks.Length == 0)
        {
            yield break;
        }

        double gain = drawnDries ? trials.GainWatts(wetted) : wetted.GeneratedWatts - dry.GeneratedWatts;
        double mostADay = weeks.Max(w => w.WettedKg / w.Days);
        string without = dry.DriesOnDay is double day
            ? $"without it the heap falls below the 40 % that microbes need on day {day:F0}"
            : $"without it the heap falls to {100 * Least(dry):F0} %";
        yield return Say.Both(
            "rewetting",
            u => $"{Lost(u)} Give back up to {Show.Volume(wetted.WettedKg, u)} from week {weeks[0].Week} to week {weeks[^1].Week}, at most "
                + $"{Show.Volume(mostADay, u)} a day, the less the harder it is drawn; {without}. It {Say.Gain(gain, u)} of heat "
                + $"{(drawnDries ? "drawn" : "made")}. {How}",
            drawnDries ? gain : null);
    }

    /// <summary>The heap held at its moisture.</summary>
    public static HeapTrialResult Wetted(SketchTrials trials, bool drawn) => trials.Run(
        trials.Settings.Heap,
        drawn
            ? trials.Draw with { HeldMoisture = HeldMoisture }
            : trials.Draw with { HeldMoisture = HeldMoisture, FlowLitresPerMinute = 0, Blows = false });

    private static double Least(HeapTrialResult trial) => trial.Weeks.Min(w => w.MoistureFraction);
}
