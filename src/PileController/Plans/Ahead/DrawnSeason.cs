using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Plans.Ahead;

/// <summary>Runs one drawn season with the controller in the loop.</summary>
internal static class DrawnSeason
{
    private const double DaySeconds = 86_400;

    /// <summary>The plan of a season: the settings moved by what was drawn, on its winter.</summary>
    public static SeasonPlan Plan(PileSettings settings, AheadWinter winter, SeasonDraw draw, int days, PlanSteps steps) => new(
        new PlantBuild(draw.Heap(settings.Heap), draw.House(settings.House), settings.Loop, settings.Power),
        settings.Control with { TickSeconds = steps.TickSeconds },
        settings.Rig with { Seed = draw.ProbeSeed },
        winter.Weather.Warmer(draw.WinterKelvin),
        HoldingBuild.StandardOffsetMinutes(settings), winter.StartUtcMilliseconds, days, steps.QuickSeconds);

    /// <summary>Runs it.</summary>
    /// <param name="plan">What it is run on.</param>
    /// <param name="winter">Which of the winters that is, from 0.</param>
    /// <param name="cancellation">Ends the run.</param>
    public static SeasonOutcome Run(SeasonPlan plan, int winter, CancellationToken cancellation)
    {
        FadeWatch fade = new();
        double generatedJ = 0;
        int day = 0;
        void Day(Holding holding, SeasonScore score)
        {
            Heap heap = holding.Plant.Heap;
            day++;
            fade.Add(day, (heap.Ledger.GeneratedJ - generatedJ) / DaySeconds, score.LitOnDay);
            generatedJ = heap.Ledger.GeneratedJ;
        }

        SeasonResult result = SeasonRun.Beside(plan, UndrawnHouse.SetPointDegreeHours(plan), Day, cancellation);
        HeapBuild build = plan.Build.Heap;
        double dryKg = build.WetMassKg * (1 - build.MoistureFraction);
        return new SeasonOutcome(
            winter, result.DrawnKWh, result.UsefulKWh, result.GeneratedKWh, dryKg * (build.FastFraction + build.SlowFraction),
            result.MinHouseC, result.HoursBelowMinimum, result.ColdDegreeHours, result.LitOnDay,
            Earlier(fade.FadesOnDay, result.LitOnDay is null ? null : result.StalledOnDay), result.WaterLostKg,
            result.DryMassLostKg, result.PumpKWh, result.BlowerKWh, result.EnergyErrorFraction,
            result.TrippedHours);
    }

    private static double? Earlier(double? one, double? other) =>
        one is { } a && other is { } b ? Math.Min(a, b) : one ?? other;
}
