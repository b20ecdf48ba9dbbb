using PileController.Control;
using PileController.Control.Decisions;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Records;
using PileController.Rigs.Faults;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Serving;

/// <summary>Brings a simulated holding to the moment its page opens.</summary>
internal static class SimulatedSite
{
    /// <summary>
    /// A new record: fourteen days of history from the warm start. An old one: the holding as it was kept last, its
    /// actuators off for the time since.
    /// </summary>
    public static async Task<Holding> OpenAsync(
        PileSettings settings, DataFolder folder, LiteRecord record, FaultBoard faults, TextWriter say, CancellationToken cancellation)
    {
        // Found on the record's own thread meanwhile: a start after a cut should be short.
        Task<Memory?> asked = record.LastMemoryAsync(cancellation);

        // Sped up, the demo lives through its weather within days, and is left running.
        WeatherSeries weather = Demo.Weather(HoldingBuild.Place(settings)).GoingRound();
        int offset = HoldingBuild.StandardOffsetMinutes(settings);
        PlantBuild build = HoldingBuild.Plant(settings);
        string mark = settings.PlantFingerprint();
        WarmStart? left = folder.FindHolding();
        if (await asked is { } last)
        {
            HoldingState kept = left is { } found && found.MadeWith == mark
                ? found.State
                : await WarmAsync(settings, weather, say, cancellation);
            Holding resumed = new(build, settings.Control, settings.Rig, weather, offset, kept with { Control = last.AfterRestart() }, faults);
            // A simulated holding's monotonic clock is its wall clock.
            CatchUp(resumed, settings.Control, last.LastMonotonicMilliseconds);
            return resumed;
        }

        HoldingState warm = await WarmAsync(settings, weather, say, cancellation);
        Holding holding = new(build, settings.Control, settings.Rig, weather, offset, warm, faults);
        await record.AppendHistoryAsync(History.Live(holding, settings.Control, Demo.HistoryDays), cancellation);
        return holding;
    }

    private static async Task<HoldingState> WarmAsync(
        PileSettings settings, WeatherSeries weather, TextWriter say, CancellationToken cancellation)
    {
        WarmStart shipped = WarmStart.Shipped();
        if (shipped.MadeWith == WarmStart.MarkOf(settings))
        {
            return shipped.State;
        }

        await say.WriteLineAsync($"These settings are not the demo's own: living {Demo.WarmDays} days of its weather first.");
        SeasonPlan plan = SeasonPlanning.Of(
            settings, settings.Control with { Policy = DrawPolicy.Means }, weather, Demo.Built, Demo.WarmDays);
        (_, HoldingState? state) = await SeasonRun.RunAsync(plan, TimeProvider.System, null, cancellation);
        return state ?? throw new InvalidOperationException("A season of whole days ends at a whole minute.");
    }

    private static void CatchUp(Holding holding, ControlSettings control, long utcMilliseconds)
    {
        holding.Rig.Apply(Outputs.Safe);
        while (holding.Plant.UtcMilliseconds <= utcMilliseconds)
        {
            holding.Rig.Advance(control.TickSeconds);
        }
    }
}
