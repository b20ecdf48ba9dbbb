using PileController.Physics.Heaps;
using PileController.Units;

namespace PileController.Plans.Sketch.Advice;

/// <summary>A warmer cover, a wetter or drier mix, a larger heap.</summary>
internal static class HeapAdvice
{
    private const double MoreCoverM = 0.15;
    private const double MostCoverM = 0.6;
    private const double MoistureStep = 0.05;
    private const double MoreShare = 0.15;

    // Acceptable moisture by The Composting Handbook (2021).
    private const double LeastMoisture = 0.40;
    private const double MostMoisture = 0.65;

    public static IEnumerable<PlanWords> Of(SketchTrials trials)
    {
        HeapBuild build = trials.Settings.Heap;
        double now = trials.Base.DrawnWatts;
        if (build.CoverThicknessM + MoreCoverM <= MostCoverM)
        {
            double gain = trials.GainWatts(trials.With(WithMoreCover(build)));
            yield return Say.Both(
                "cover",
                u => $"A dry blanket {Show.Length(MoreCoverM, u)} thicker over top and side {Say.Gain(gain, u)}{Say.Worth(gain, now)}.",
                gain, Say.IsWorth(gain, now));
        }

        double larger = trials.GainWatts(trials.With(Larger(build)));
        yield return Say.Both(
            "heap",
            u => $"{Show.Mass(MoreShare * build.WetMassKg, u)} more of the same mix in the same shape {Say.Gain(larger, u)}{Say.Worth(larger, now)}.",
            larger, Say.IsWorth(larger, now));

        if (Mix(trials) is PlanWords mix)
        {
            yield return mix;
        }
    }

    public static HeapBuild WithMoreCover(HeapBuild build) => build with { CoverThicknessM = build.CoverThicknessM + MoreCoverM };

    /// <summary>More of the mix: mass grows with the cube of the size.</summary>
    public static HeapBuild Larger(HeapBuild build)
    {
        double size = Math.Cbrt(1 + MoreShare);
        return build with
        {
            WetMassKg = build.WetMassKg * (1 + MoreShare),
            RadiusM = build.RadiusM * size,
            HeightM = build.HeightM * size,
        };
    }

    /// <summary>The same dry mass with another moisture.</summary>
    public static HeapBuild Moister(HeapBuild build, double moisture) => build with
    {
        MoistureFraction = moisture,
        WetMassKg = build.WetMassKg * (1 - build.MoistureFraction) / (1 - moisture),
    };

    // Of wetter and drier the better one is told.
    private static PlanWords? Mix(SketchTrials trials)
    {
        HeapBuild build = trials.Settings.Heap;
        HeapBuild? best = null;
        double gain = double.NegativeInfinity;
        foreach (double step in new[] { MoistureStep, -MoistureStep })
        {
            double moisture = build.MoistureFraction + step;
            if (moisture is < LeastMoisture or > MostMoisture)
            {
                continue;
            }

            HeapBuild tried = Moister(build, moisture);
            double tells = trials.GainWatts(trials.With(tried));
            if (tells > gain)
            {
                (best, gain) = (tried, tells);
            }
        }

        if (best is null)
        {
            return null;
        }

        double litres = Math.Abs(best.WetMassKg - build.WetMassKg);
        bool drier = best.WetMassKg < build.WetMassKg;
        return Say.Both(
            "moisture",
            u => $"A mix with {100 * best.MoistureFraction:F0} % of water instead of {100 * build.MoistureFraction:F0} % "
                + $"({Show.Volume(litres, u)} {(drier ? "less" : "more")}) {Say.Gain(gain, u)}{Say.Worth(gain, trials.Base.DrawnWatts)}"
                + $"; {(drier ? "a wetter one would shut out air" : "a drier one would slow the microbes")}.",
            gain, Say.IsWorth(gain, trials.Base.DrawnWatts));
    }
}
