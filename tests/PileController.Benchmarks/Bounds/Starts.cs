using PileController.Control;
using PileController.Control.Decisions;
using PileController.Seasons;
using PileController.Simulation;

namespace PileController.Benchmarks.Bounds;

/// <summary>A draw rule lived through the season: its cold degree-hours and what it drew, as a plan.</summary>
internal sealed record RuleRun(string Name, double ColdDegreeHours, double HoursBelowFloor, Schedule Drawn);

/// <summary>Plans to start the search from, as unlike as can be.</summary>
internal static class Starts
{
    private const int RandomSeed = 20121101;
    private static readonly Command[] NoCommands = [];

    public static RuleRun Live(SeasonPlan season, DrawPolicy policy)
    {
        ControlSettings control = season.Control with { Policy = policy };
        Holding holding = new(
            season.Build, control, season.Rig, season.Weather, season.OffsetMinutes, season.StartUtcMilliseconds);
        SeasonScore score = new(control);
        Schedule drawn = Schedule.Nothing(season.Days * 24);
        double seconds = control.TickSeconds;
        long ticks = (long)(season.Days * 86_400 / seconds);
        for (long i = 0; i < ticks; i++)
        {
            Decision decision = holding.Tick(holding.Read(), NoCommands);
            score.Add(holding.Plant, decision, seconds);
            int hour = (int)(i * seconds / 3600);
            drawn.Water[hour] += decision.Outputs.PumpDuty * seconds / 3600;
            drawn.Air[hour] += decision.Outputs.BlowerDuty * seconds / 3600;
        }

        return new RuleRun(policy.ToString().ToLowerInvariant(), score.ColdDegreeHours, score.HoursBelowFloor, drawn);
    }

    public static IReadOnlyList<(string Name, Schedule Plan)> Of(SeasonPlan season, RuleRun means, RuleRun cutout)
    {
        int hours = season.Days * 24;
        int firstHour = (int)((season.StartUtcMilliseconds / 3_600_000) + (season.OffsetMinutes / 60)) % 24;
        Random random = new(RandomSeed);
        return
        [
            ("nothing", Schedule.Nothing(hours)),
            ("means", means.Drawn),
            ("cutout", cutout.Drawn),
            ("nights", Schedule.Of(hours, h => (firstHour + h) % 24 is >= 18 or < 7 ? (0.5, 0.3) : (0, 0))),
            ("random", Schedule.Of(hours, _ => (random.NextDouble(), random.NextDouble()))),
        ];
    }
}
