using PileController.Control;
using PileController.Control.Decisions;
using PileController.Panel.Now;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Service;
using PileController.Whys;

namespace PileController.Panel.Queries;

/// <summary>What a tick would have decided had one thing been otherwise.</summary>
internal sealed record WhatIfBody(string What, string Mode, string Curb, double? GrantWatts, OutputsBody Outputs);

/// <summary>One decision, opened: all it knew and chose, who had asked for something, and what would have changed it.</summary>
internal sealed record OneDecisionBody(NowBody Decision, IReadOnlyList<string> Kinds, IReadOnlyList<Asker> Askers, IReadOnlyList<WhatIfBody> WhatIfs);

/// <summary><c>GET /api/decisions/{sequence}</c>: one tick, decided again from the record.</summary>
internal static class DecisionApi
{
    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/decisions/{sequence:long}", GetAsync);

    private static async Task<IResult> GetAsync(
        long sequence, IPileRecord record, PanelSetup setup, TickSettings ticks, NowReport report, CancellationToken cancellation)
    {
        RecalledTick? tick = await record.TickAsync(sequence, StepsOf, cancellation);
        if (tick is null || setup.ControlOf(tick.Origin.SettingsHash) is not { } settings)
        {
            return Answers.Refused(
                StatusCodes.Status404NotFound, "Not kept",
                $"Tick {sequence} is not among the single ticks that are kept, or the settings it was made with are not; its line in the list is all there is.");
        }

        (Decision decision, Memory after) = ticks.Step(settings, tick.Before, tick.Raw, tick.Commands, tick.At);
        NowBody body = report.Of(new TickNews(decision, tick.Raw, record.Health, after)) with
        {
            HouseMinimumC = settings.HouseMinimumC,
            HeapFloorC = settings.HeapFloorC,
            HeapFireC = settings.Limits.HeapFireC,
        };
        return TypedResults.Ok(new OneDecisionBody(
            body, WireNames.Flags(decision.Kinds), [.. tick.Commands.Select(command => command.Asker).OfType<Asker>().Distinct()], [.. WhatIfs.Of(settings, tick, decision).Select(BodyOf)]));

        ReplayStep? StepsOf(RecordOrigin origin) => setup.ControlOf(origin.SettingsHash) is { } kept
            ? (memory, readings, commands, at) => ticks.Step(kept, memory, readings, commands, at)
            : null;
    }

    private static WhatIfBody BodyOf(WhatIf one) => new(
        WireNames.Of(one.What), WireNames.Of(one.Mode), WireNames.Of(one.Curb), double.IsFinite(one.GrantWatts) ? one.GrantWatts : null,
        new OutputsBody(one.Outputs.PumpDuty, one.Outputs.ValveOpening, one.Outputs.BlowerDuty, one.Outputs.BackupOn));
}
