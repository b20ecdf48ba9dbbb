using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Panel.Now;
using PileController.Records;
using PileController.Service;

namespace PileController.Panel.Queries;

/// <summary>How the service is.</summary>
/// <param name="Healthy">Ticks come on time.</param>
/// <param name="Reasons">Why not, in sentences.</param>
/// <param name="Warnings">What else a person should know, in sentences.</param>
/// <param name="Damage">What of the record is damaged, or null.</param>
internal sealed record HealthBody(
    bool Healthy, IReadOnlyList<string> Reasons, IReadOnlyList<string> Warnings, DamageBody? Damage);

/// <summary><c>GET /healthz</c>: 200 while ticks come on time, 503 otherwise, with the reasons.</summary>
internal static class HealthApi
{
    /// <summary>Adds the route.</summary>
    public static void Map(IEndpointRouteBuilder routes) => routes.MapMethods("/healthz", Looking.Methods, Get);

    private static JsonHttpResult<HealthBody> Get(PanelFeed feed, TickCounts counts, PanelSetup setup, IPileRecord record)
    {
        HealthBody body = Judge(feed.Age, setup.TrueTick, counts, record.Health);
        return TypedResults.Json(body, statusCode: body.Healthy ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
    }

    /// <summary>Judges from the age of the newest tick, in true time, and the counts.</summary>
    internal static HealthBody Judge(TimeSpan? age, TimeSpan trueTick, TickCounts counts, RecordHealth record)
    {
        List<string> reasons = [];
        List<string> warnings = [];
        if (age is not { } since)
        {
            reasons.Add("No tick has finished yet.");
        }
        else if (!new Punctuality(trueTick).OnTime(since))
        {
            reasons.Add($"The last tick finished {since.TotalSeconds:0.0} s ago; one is due every {trueTick.TotalSeconds:0.###} s.");
        }

        if (counts.LastFault is { } fault)
        {
            warnings.Add($"{counts.StepFaults} control and {counts.RigFaults} rig faults since the start; the last: {fault}");
        }

        if (counts.Missed > 0)
        {
            warnings.Add(counts.Missed == 1 ? "1 tick fell out since the start." : $"{counts.Missed} ticks fell out since the start.");
        }

        if (!record.Accepting)
        {
            warnings.Add($"The record does not accept ticks: {record.Fault ?? "no reason is known"}");
        }

        if (record.Damage is { } damage)
        {
            warnings.Add(
                $"The record was found damaged: {damage.FilesSetAside} files set aside, {damage.DamagedParts} parts cannot be read; the rest can. The newest: {damage.Newest}");
        }

        return new HealthBody(reasons.Count == 0, reasons, warnings, DamageBody.Of(record.Damage));
    }
}
