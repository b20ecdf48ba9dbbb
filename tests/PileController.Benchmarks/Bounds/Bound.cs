using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// The bound: the best any planner could do with the same plant, actuators and rules, knowing plant and weather. Found
/// from five unlike starts, each sought boldly, made lawful on the exact plant, and sought carefully; the best is then
/// sought on from once more.
/// </summary>
internal static class Bound
{
    /// <summary>Bold rounds a start is given, and careful ones after them; a round is one season of the plant.</summary>
    public const int Rounds = 36;

    /// <summary>Finds the bound, or takes it from the cache.</summary>
    /// <param name="season">Rig, weather, days. The draw rule in its settings does not matter.</param>
    /// <param name="starts">Plans to start from, each with its name.</param>
    /// <param name="cacheDirectory">Where bounds are kept; null to find it anew and not keep it.</param>
    /// <param name="rounds">Rounds a start.</param>
    /// <param name="told">Told how it goes on, a line at a time.</param>
    public static BoundResult Of(
        SeasonPlan season, Func<IReadOnlyList<(string Name, Schedule Plan)>> starts, string? cacheDirectory,
        int rounds = Rounds, Action<string>? told = null)
    {
        string key = BoundCache.Key(season, rounds);
        if (cacheDirectory is not null && BoundCache.Read(cacheDirectory, key) is { } kept)
        {
            told?.Invoke("taken from the cache");
            return kept;
        }

        BoundResult found = Find(season, starts(), rounds, told);
        if (cacheDirectory is not null)
        {
            BoundCache.Write(cacheDirectory, key, found);
        }

        return found;
    }

    private static BoundResult Find(
        SeasonPlan season, IReadOnlyList<(string Name, Schedule Plan)> starts, int rounds, Action<string>? told)
    {
        Schedule nothing = Schedule.Nothing(season.Days * 24);
        Trace undrawn = new();
        Outcome none = Replay.Run(season, nothing, Replay.ExactSeconds, undrawn);
        Seeker seeker = new(season);
        (Sought Plan, Outcome Exact) best = (Sought.Start(nothing), none);
        List<StartResult> results = [];
        foreach ((string name, Schedule plan) in starts)
        {
            Action<string> telling = line => told?.Invoke($"{name}: {line}");
            (Sought Plan, Outcome Exact) bold = Lawful(season, seeker, Sought.Start(plan), Pace.Bold, rounds, telling);
            (Sought Plan, Outcome Exact) careful = Lawful(season, seeker, bold.Plan, Pace.Careful, rounds, telling);
            (Sought Plan, Outcome Exact) found = Better(careful.Exact, bold.Exact) ? careful : bold;
            results.Add(new StartResult(name, found.Exact.ColdDegreeHours, found.Exact.HoursBelowFloor));
            best = Better(found.Exact, best.Exact) ? found : best;
        }

        (Sought Plan, Outcome Exact) last = Lawful(
            season, seeker, best.Plan, Pace.Careful, rounds, line => told?.Invoke($"once more from the best: {line}"));
        best = Better(last.Exact, best.Exact) ? last : best;
        return new BoundResult(
            none.ColdDegreeHours, best.Exact.ColdDegreeHours, best.Exact.HoursBelowFloor, best.Exact.LeastActiveZoneC,
            best.Exact.DrawnKWh, Ceiling.ColdDegreeHours(season, undrawn), results, best.Plan.Plan);
    }

    // Seeks on from a plan and makes what is found lawful on the exact plant.
    private static (Sought Plan, Outcome Exact) Lawful(
        SeasonPlan season, Seeker seeker, Sought start, Pace pace, int rounds, Action<string> told)
    {
        Sought sought = seeker.Seek(start, pace, rounds, (round, lived) =>
        {
            if (round % 10 == 0)
            {
                told($"round {round}: {lived.ColdDegreeHours:F1} K·h, {lived.UndershootK:F2} K below the floor");
            }
        });
        (Schedule plan, Outcome exact) = Mending.Mend(season, sought.Plan);
        told($"sought {sought.Quick?.ColdDegreeHours:F1} K·h ({sought.Quick?.UndershootK:F2} K below the floor), mended {exact.ColdDegreeHours:F1} K·h");
        return (sought with { Plan = plan }, exact);
    }

    // A plan that undercuts the floor less is better than any that is warmer.
    private static bool Better(Outcome a, Outcome b) => a.HoursBelowFloor < b.HoursBelowFloor
        || (a.HoursBelowFloor <= b.HoursBelowFloor && a.ColdDegreeHours < b.ColdDegreeHours);
}
