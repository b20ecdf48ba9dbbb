using PileController.Control;
using PileController.Control.Decisions;
using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Rigs;
using PileController.Simulation;

namespace PileController.Seasons;

/// <summary>What a season is run on.</summary>
internal sealed record SeasonPlan(
    PlantBuild Build, ControlSettings Control, RigSettings Rig, WeatherSeries Weather, int OffsetMinutes,
    long StartUtcMilliseconds, int Days);

/// <summary>
/// Runs a season: physics, rig and controller, tick by tick, record off. Beside it runs the same season with nothing
/// drawn, against which the useful heat is reckoned.
/// </summary>
internal static class SeasonRun
{
    private const double JoulesPerKWh = 3.6e6;
    private static readonly Command[] NoCommands = [];

    /// <summary>Runs the season and its undrawn twin.</summary>
    /// <param name="plan">What it is run on.</param>
    /// <param name="time">Tells how long the run took.</param>
    /// <param name="progress">Told the share done, 0 to 1, once a day.</param>
    /// <param name="cancellation">Ends the run.</param>
    public static async Task<(SeasonResult Result, HoldingState? Final)> RunAsync(
        SeasonPlan plan, TimeProvider time, Action<double>? progress, CancellationToken cancellation)
    {
        Task<double> undrawn = plan.Control.Policy == DrawPolicy.None
            ? Task.FromResult(double.NaN)
            : Task.Run(() => Undrawn(plan, cancellation), cancellation);
        long started = time.GetTimestamp();
        (Holding holding, SeasonScore score, double startStoredJ, HeapLedger start, double startDry, double startWater) =
            Live(plan, progress, cancellation);
        double wall = time.GetElapsedTime(started).TotalSeconds;
        double undrawnDegreeHours = await undrawn.ConfigureAwait(false);
        double avoided = double.IsNaN(undrawnDegreeHours) ? 0 : undrawnDegreeHours - score.SetPointDegreeHours;

        Heap heap = holding.Plant.Heap;
        HeapLedger end = heap.Ledger;
        double generated = end.GeneratedJ - start.GeneratedJ;
        double lost = end.LostJ - start.LostJ;
        double drawn = end.DrawnJ - start.DrawnJ;
        double stored = heap.StoredJ - startStoredJ;
        double throughput = generated + Math.Abs(drawn) + Math.Abs(lost);
        double error = throughput > 0 ? Math.Abs(stored - (generated - lost - drawn)) / throughput : 0;
        Totals totals = holding.Memory.Totals;
        SeasonResult result = new(
            plan.Control.Policy.ToString().ToLowerInvariant(), plan.Days, Ticks(plan), wall, drawn / JoulesPerKWh,
            (totals.WaterJoules + totals.AirJoules) / JoulesPerKWh,
            plan.Build.House.LossWPerK * avoided / 1000, generated / JoulesPerKWh, lost / JoulesPerKWh, stored / JoulesPerKWh,
            error, startDry - heap.DryKg, startWater - heap.WaterKg, score.ColdDegreeHours, score.HoursBelowMinimum,
            score.MinHouseC, score.MinActiveZoneC, score.MinTurnsC, score.LitOnDay, score.HoursBelowFloor,
            score.FrostGuardHours, score.StalledOnDay, totals.PumpJoules / JoulesPerKWh, totals.BlowerJoules / JoulesPerKWh,
            score.BatteryHeldHours, NotMeasured(plan.Weather.Origins));
        return (result, holding.Plant.AtSlowStep ? holding.Snapshot() : null);
    }

    private static List<string> NotMeasured(WeatherOrigins origins)
    {
        List<string> told = [];
        void Tell(string what, WeatherOrigin origin)
        {
            if (origin != WeatherOrigin.Measured)
            {
                told.Add($"{what}: {Words(origin)}");
            }
        }

        Tell("temperature", origins.OutsideC);
        Tell("sun", origins.SunWPerM2);
        Tell("wind", origins.WindMPerS);
        Tell("humidity", origins.Humidity);
        return told;
    }

    private static string Words(WeatherOrigin origin) => origin switch
    {
        WeatherOrigin.SpreadFromDaily => "spread over the day from daily values",
        WeatherOrigin.Estimated => "estimated from the day's span of temperature",
        _ => "assumed, one figure for all hours",
    };

    private static double Undrawn(SeasonPlan plan, CancellationToken cancellation)
    {
        SeasonPlan none = plan with { Control = plan.Control with { Policy = DrawPolicy.None } };
        return Live(none, null, cancellation).Score.SetPointDegreeHours;
    }

    private static (Holding Holding, SeasonScore Score, double StoredJ, HeapLedger Start, double DryKg, double WaterKg) Live(
        SeasonPlan plan, Action<double>? progress, CancellationToken cancellation)
    {
        Holding holding = new(
            plan.Build, plan.Control, plan.Rig, plan.Weather, plan.OffsetMinutes, plan.StartUtcMilliseconds);
        SeasonScore score = new(plan.Control);
        Heap heap = holding.Plant.Heap;
        double stored = heap.StoredJ;
        HeapLedger start = heap.Ledger;
        double dry = heap.DryKg;
        double water = heap.WaterKg;
        long ticks = Ticks(plan);
        long day = (long)(86_400 / plan.Control.TickSeconds);
        for (long i = 1; i <= ticks; i++)
        {
            Decision decision = holding.Tick(holding.Read(), NoCommands);
            score.Add(holding.Plant, decision, plan.Control.TickSeconds);
            if (i % day == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Invoke((double)i / ticks);
            }
        }

        return (holding, score, stored, start, dry, water);
    }

    private static long Ticks(SeasonPlan plan) => (long)(plan.Days * 86_400.0 / plan.Control.TickSeconds);
}
