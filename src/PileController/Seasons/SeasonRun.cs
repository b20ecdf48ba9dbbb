using PileController.Control;
using PileController.Control.Decisions;
using PileController.Forecasts;
using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Rigs;
using PileController.Simulation;

namespace PileController.Seasons;

/// <summary>
/// What a season is run on. <c>QuickSeconds</c> is the longest quick step of its plant; a <c>Forecast</c> is handed over anew
/// four times a day, from the hour at hand on.
/// </summary>
internal sealed record SeasonPlan(
    PlantBuild Build, ControlSettings Control, RigSettings Rig, WeatherSeries Weather, int OffsetMinutes,
    long StartUtcMilliseconds, int Days, double QuickSeconds = Plant.UsualQuickSeconds,
    ForecastSeries? Forecast = null);

/// <summary>
/// Runs a season: physics, rig and controller, tick by tick, record off. Beside it runs the same season with nothing
/// drawn, against which the useful heat is reckoned.
/// </summary>
internal static class SeasonRun
{
    private const double JoulesPerKWh = 3.6e6;
    private const double ForecastsADay = 4;
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
        Lived lived = Live(plan, (_, _, share) => progress?.Invoke(share), cancellation);
        double wall = time.GetElapsedTime(started).TotalSeconds;
        SeasonResult result = Sum(plan, lived, wall, await undrawn.ConfigureAwait(false));
        return (result, lived.Holding.Plant.AtSlowStep ? lived.Holding.Snapshot() : null);
    }

    /// <summary>Runs the season against an undrawn twin that is known already.</summary>
    /// <param name="plan">What it is run on.</param>
    /// <param name="undrawnDegreeHours">Degree-hours below the set point with nothing drawn, K·h.</param>
    /// <param name="daily">Told the holding and its score, once a day.</param>
    /// <param name="cancellation">Ends the run.</param>
    public static SeasonResult Beside(
        SeasonPlan plan, double undrawnDegreeHours, Action<Holding, SeasonScore> daily, CancellationToken cancellation) =>
        Sum(plan, Live(plan, (holding, score, _) => daily(holding, score), cancellation), double.NaN, undrawnDegreeHours);

    private static SeasonResult Sum(SeasonPlan plan, Lived lived, double wall, double undrawnDegreeHours)
    {
        SeasonScore score = lived.Score;
        double avoided = double.IsNaN(undrawnDegreeHours) ? 0 : undrawnDegreeHours - score.SetPointDegreeHours;
        Heap heap = lived.Holding.Plant.Heap;
        HeapLedger end = heap.Ledger;
        double generated = end.GeneratedJ - lived.Start.GeneratedJ;
        double lost = end.LostJ - lived.Start.LostJ;
        double drawn = end.DrawnJ - lived.Start.DrawnJ;
        double stored = heap.StoredJ - lived.StoredJ;
        double throughput = generated + Math.Abs(drawn) + Math.Abs(lost);
        double error = throughput > 0 ? Math.Abs(stored - (generated - lost - drawn)) / throughput : 0;
        Totals totals = lived.Holding.Memory.Totals;
        return new SeasonResult(
            plan.Control.Policy.ToString().ToLowerInvariant(), plan.Days, Ticks(plan), wall, drawn / JoulesPerKWh,
            (totals.WaterJoules + totals.AirJoules) / JoulesPerKWh,
            plan.Build.House.LossWPerK * avoided / 1000, generated / JoulesPerKWh, lost / JoulesPerKWh, stored / JoulesPerKWh,
            error, lived.DryKg - heap.DryKg, lived.WaterKg - heap.WaterKg, score.ColdDegreeHours, score.HoursBelowMinimum,
            score.MinHouseC, score.MinActiveZoneC, score.MinTurnsC, score.LitOnDay, score.HoursBelowFloor,
            score.FrostGuardHours, score.StalledOnDay, totals.PumpJoules / JoulesPerKWh, totals.BlowerJoules / JoulesPerKWh,
            score.BatteryHeldHours, score.TrippedHours, NotMeasured(plan.Weather.Origins), score.Tonight);
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

    private static Lived Live(SeasonPlan plan, Action<Holding, SeasonScore, double>? daily, CancellationToken cancellation)
    {
        Holding holding = new(
            plan.Build, plan.Control, plan.Rig, plan.Weather, plan.OffsetMinutes, plan.StartUtcMilliseconds, plan.QuickSeconds);
        SeasonScore score = new(plan.Control);
        Heap heap = holding.Plant.Heap;
        Lived lived = new(holding, score, heap.StoredJ, heap.Ledger, heap.DryKg, heap.WaterKg);
        long ticks = Ticks(plan);
        long day = (long)(86_400 / plan.Control.TickSeconds);
        long forecasts = (long)(day / ForecastsADay);
        for (long i = 1; i <= ticks; i++)
        {
            Decision decision = holding.Tick(holding.Read(), (i - 1) % forecasts == 0 ? Foretold(plan, holding) : NoCommands);
            score.Add(holding.Plant, decision, plan.Control.TickSeconds);
            if (i % day == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                daily?.Invoke(holding, score, (double)i / ticks);
            }
        }

        return lived;
    }

    private static Command[] Foretold(SeasonPlan plan, Holding holding) =>
        plan.Forecast?.At(holding.Plant.UtcMilliseconds) is { } forecast ? [new TakeForecast(forecast)] : NoCommands;

    private static long Ticks(SeasonPlan plan) => (long)(plan.Days * 86_400.0 / plan.Control.TickSeconds);

    // The holding at the end of the season, its score, and what the heap had at the start.
    private sealed record Lived(Holding Holding, SeasonScore Score, double StoredJ, HeapLedger Start, double DryKg, double WaterKg);
}
