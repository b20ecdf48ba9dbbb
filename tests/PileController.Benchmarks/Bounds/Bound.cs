using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// The bound: the best any planner could do with the same plant, actuators and rules, knowing plant and weather. Found
/// from five unlike starts, each sought by itself and made lawful on the exact plant; the best of them is the bound.
/// </summary>
internal static class Bound
{
    /// <summary>Rounds a start is given; a round is one season of the plant.</summary>
    public const int Rounds = 60;

    /// <summary>Finds the bound, or takes it from the cache.</summary>
    /// <param name="season">Rig, weather, days. The draw rule in its settings does not matter.</param>
    /// <param name="starts">Plans to start from, each with its name.</param>
    /// <param name="cacheDirectory">Where bounds are kept; null to find it anew and not keep it.</param>
    /// <param name="rounds">Rounds a start.</param>
    /// <param name="cores">Starts that are sought at once.</param>
    /// <param name="told">Told how it goes on, a line at a time.</param>
    public static BoundResult Of(
        SeasonPlan season, Func<IReadOnlyList<(string Name, Schedule Plan)>> starts, string? cacheDirectory,
        int rounds, int cores, Action<string>? told = null)
    {
        string key = BoundCache.Key(season, rounds);
        if (cacheDirectory is not null && BoundCache.Read(cacheDirectory, key) is { } kept)
        {
            told?.Invoke("taken from the cache");
            return kept;
        }

        BoundResult found = Find(season, starts(), rounds, cores, told);
        if (cacheDirectory is not null)
        {
            BoundCache.Write(cacheDirectory, key, found);
        }

        return found;
    }

    private static BoundResult Find(
        SeasonPlan season, IReadOnlyList<(string Name, Schedule Plan)> starts, int rounds, int cores,
        Action<string>? told)
    {
        Schedule nothing = Schedule.Nothing(season.Days * 24);
        Trace undrawn = new();
        Outcome none = Replay.Run(season, nothing, Replay.ExactSeconds, undrawn);
        Sought[] found = new Sought[starts.Count];
        Parallel.For(0, starts.Count, new ParallelOptions { MaxDegreeOfParallelism = cores }, i =>
            found[i] = Lawful(season, starts[i].Plan, rounds, line => told?.Invoke($"{starts[i].Name}: {line}")));
        List<StartResult> results =
        [
            .. found.Select((f, i) => new StartResult(starts[i].Name, f.Exact.ColdDegreeHours, f.Exact.HoursBelowFloor)),
        ];
        Sought best = found.Aggregate(new Sought(nothing, none), (a, b) => Better(b.Exact, a.Exact) ? b : a);
        return new BoundResult(
            none.ColdDegreeHours, best.Exact.ColdDegreeHours, best.Exact.HoursBelowFloor, best.Exact.LeastActiveZoneC,
            best.Exact.DrawnKWh, Ceiling.ColdDegreeHours(season, undrawn), results, best.Plan);
    }

    // Seeks from a start by itself and makes what is found lawful; a start that is lawful as it is, is never made worse.
    private static Sought Lawful(SeasonPlan season, Schedule start, int rounds, Action<string> told)
    {
        Sought sought = new Seeker(season).Seek(start, rounds, (round, lived) =>
        {
            if (round % 5 == 0 || round >= rounds - Pace.ExactRounds)
            {
                told($"round {round}: {lived.ColdDegreeHours:F1} K·h, {lived.UndershootK:F3} K below the floor");
            }
        });
        (Schedule plan, Outcome exact) = Mending.Mend(season, sought.Plan);
        Outcome asItIs = Replay.Run(season, start, Replay.ExactSeconds);
        (plan, exact) = Better(asItIs, exact) ? (start, asItIs) : (plan, exact);
        told($"sought {sought.Exact.ColdDegreeHours:F1} K·h ({sought.Exact.UndershootK:F3} K below the floor), mended {exact.ColdDegreeHours:F1} K·h");
        return new Sought(plan, exact);
    }

    // A plan that undercuts the floor less is better than any that is warmer.
    private static bool Better(Outcome a, Outcome b) => a.HoursBelowFloor < b.HoursBelowFloor
        || (a.HoursBelowFloor <= b.HoursBelowFloor && a.ColdDegreeHours < b.ColdDegreeHours);
}
