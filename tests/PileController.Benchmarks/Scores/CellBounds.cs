using PileController.Benchmarks.Bounds;
using PileController.Control;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;

namespace PileController.Benchmarks.Scores;

/// <summary>
/// The bounds of the scoreboard's rigs and winters. Rigs that differ only in what the controller is told or what its
/// probes say share one.
/// </summary>
internal sealed class CellBounds(string cacheDirectory, int rounds, Action<string> told)
{
    // The plans to start from need not be lived to the last tick.
    private const double StartTickSeconds = 60;

    /// <summary>The bound's cell for each rig and winter; null where it is not kept and not to be found.</summary>
    /// <param name="asked">Rigs and winters.</param>
    /// <param name="find">Whether bounds that are not kept are to be found.</param>
    public Cell?[] Of(IReadOnlyList<(RigCase Rig, string Name, WeatherSeries Weather, DateOnly Start)> asked, bool find)
    {
        SeasonPlan[] plans = [.. asked.Select(a => SeasonPlanning.Of(a.Rig.Settings, a.Rig.Settings.Control, a.Weather, a.Start, Winter.Days))];
        string[] keys = [.. plans.Select(p => BoundCache.Key(p, rounds))];
        int[] distinct = [.. Enumerable.Range(0, asked.Count).DistinctBy(i => keys[i])];
        int cores = Environment.ProcessorCount;
        if (find)
        {
            // One winter's starts share the cores when there are fewer winters than cores.
            int each = Math.Max(1, cores / Math.Max(1, distinct.Length));
            Parallel.ForEach(distinct, new ParallelOptions { MaxDegreeOfParallelism = cores }, i =>
                Bound.Of(plans[i], () => Begun(plans[i]), cacheDirectory, rounds, each,
                    line => told($"bound of {asked[i].Rig.Name}, {asked[i].Name}: {line}")));
        }

        return [.. asked.Select((a, i) => BoundCache.Read(cacheDirectory, keys[i]) is { } bound
            ? Told(a.Rig, a.Name, plans[i].Control.HeapFloorC, bound)
            : null)];
    }

    private static IReadOnlyList<(string Name, Schedule Plan)> Begun(SeasonPlan plan)
    {
        SeasonPlan quick = plan with { Control = plan.Control with { TickSeconds = StartTickSeconds } };
        return Starts.Of(plan, Starts.Live(quick, DrawPolicy.Means), Starts.Live(quick, DrawPolicy.Cutout));
    }

    private static Cell Told(RigCase rig, string weather, double floorC, BoundResult bound) => new(
        $"{rig.Name}, {weather}, {Cell.Bound}", rig.Name, weather, Cell.Bound, bound.HoursBelowFloor,
        Math.Max(0, floorC - bound.LeastActiveZoneC), bound.ColdDegreeHours, null, null, null, null, null, null, null, null, null,
        null, null, false, bound.CertificateColdDegreeHours);
}
