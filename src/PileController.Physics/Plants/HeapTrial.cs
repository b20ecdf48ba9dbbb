using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Plants;

/// <summary>
/// A heap alone through a winter, with no controller: in each step it gives as much as coil, drum and ducts can take,
/// throttled so that the active zone holds above its floor. The heap is the plant's own, sleeve round the pipe included;
/// only its steps are longer. Pure: the same build, draw and weather give the same figures.
/// </summary>
public static class HeapTrial
{
    /// <summary>Length of a step, s. Against steps of a minute it changes heat made and drawn by less than 2 % (a test holds it).</summary>
    public const double StepSeconds = 1800;

    /// <summary>Lower end of the published band of moisture, share of the wet mass (The Composting Handbook, 2021).</summary>
    public const double DryMoisture = 0.40;

    /// <summary>The surroundings of a heap step by step, at the middle of each.</summary>
    /// <param name="weather">The weather; it must cover all the days.</param>
    /// <param name="startUtcMilliseconds">When the heap is built.</param>
    /// <param name="days">How many days, 1 or more.</param>
    /// <param name="groundC">Deep ground, °C.</param>
    /// <param name="stepSeconds">Length of a step, s; a divisor of the day.</param>
    public static HeapSite[] Sites(
        WeatherSeries weather, long startUtcMilliseconds, int days, double groundC, double stepSeconds = StepSeconds)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(days);
        HeapSite[] sites = new HeapSite[(int)Math.Round(days * 86_400 / stepSeconds)];
        for (int i = 0; i < sites.Length; i++)
        {
            WeatherSample sky = weather.At(startUtcMilliseconds + (long)((i + 0.5) * stepSeconds * 1000));
            sites[i] = new HeapSite(sky.OutsideC, sky.Humidity, sky.WindMPerS, groundC, 0);
        }

        return sites;
    }

    /// <summary>Runs a trial.</summary>
    /// <param name="build">The heap.</param>
    /// <param name="draw">How it is drawn on.</param>
    /// <param name="sites">Its surroundings, step by step; see <see cref="Sites"/>.</param>
    /// <param name="stepSeconds">Length of a step, s; that of <paramref name="sites"/>.</param>
    public static HeapTrialResult Run(
        HeapBuild build, TrialDraw draw, IReadOnlyList<HeapSite> sites, double stepSeconds = StepSeconds)
    {
        Heap heap = new(build);
        TrialTaker taker = new(build, draw, heap, stepSeconds);
        TrialBook book = new(heap, draw);
        int stepsADay = (int)Math.Round(86_400 / stepSeconds);
        for (int i = 0; i < sites.Count; i++)
        {
            double blownM3PerS = taker.Take(book.Lit ? draw.Share(heap.ActiveZoneC) : 0);
            HeapSite site = sites[i] with { BlowerM3PerS = blownM3PerS };
            int parts = (int)Math.Ceiling(stepSeconds / heap.LongestSlowSeconds(site));
            for (int part = 0; part < parts; part++)
            {
                heap.StepSlow(stepSeconds / parts, site);
            }

            book.Add(heap, stepSeconds);
            if ((i + 1) % stepsADay == 0)
            {
                book.Water(heap, build.WetMassKg, Math.Max(Water.LowestC, sites[i].GroundC));
            }
        }

        return book.Result(heap);
    }
}
