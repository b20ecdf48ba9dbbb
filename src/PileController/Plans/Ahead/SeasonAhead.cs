using PileController.Settings;

namespace PileController.Plans.Ahead;

/// <summary>What a season ahead is run on.</summary>
/// <param name="Settings">The holding; its section "plan" says how much is drawn.</param>
/// <param name="Winters">The winters, one at least; seasons take them in turn.</param>
/// <param name="Seasons">How many seasons, 1 or more.</param>
/// <param name="Days">How long each is.</param>
/// <param name="Seed">Seed of all that is drawn.</param>
internal sealed record AheadRequest(
    PileSettings Settings, IReadOnlyList<AheadWinter> Winters, int Seasons, int Days, long Seed);

/// <summary>
/// Runs many seasons, each on one of the winters with a heap and a house drawn from the stated spreads and the real
/// controller in the loop. Season k hangs on the seed and on k alone: not on how many others there are, nor on the core
/// it runs on.
/// </summary>
internal static class SeasonAhead
{
    /// <summary>Runs them all, on as many cores as are given.</summary>
    /// <param name="request">What they are run on.</param>
    /// <param name="cores">How many run at once, 1 or more.</param>
    /// <param name="done">Told how many are done, after each; from any thread, one call at a time.</param>
    /// <param name="cancellation">Ends the run.</param>
    public static async Task<IReadOnlyList<SeasonOutcome>> RunAsync(
        AheadRequest request, int cores, Action<int>? done, CancellationToken cancellation)
    {
        SeasonOutcome[] outcomes = new SeasonOutcome[request.Seasons];
        int finished = 0;
        Lock telling = new();
        ParallelOptions options = new() { MaxDegreeOfParallelism = cores, CancellationToken = cancellation };
        await Parallel.ForAsync(0, request.Seasons, options, (season, stop) =>
        {
            outcomes[season] = Run(request, season, PlanSteps.Planning, stop);
            lock (telling)
            {
                finished++;
                done?.Invoke(finished);
            }

            return ValueTask.CompletedTask;
        }).ConfigureAwait(false);
        return outcomes;
    }

    /// <summary>Runs one season.</summary>
    public static SeasonOutcome Run(AheadRequest request, int season, PlanSteps steps, CancellationToken cancellation)
    {
        int winter = season % request.Winters.Count;
        SeasonDraw draw = SeasonDraw.Of(request.Settings.Plan.Spreads, request.Seed, season);
        return DrawnSeason.Run(
            DrawnSeason.Plan(request.Settings, request.Winters[winter], draw, request.Days, steps), winter, cancellation);
    }
}
