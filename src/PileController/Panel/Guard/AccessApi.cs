using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Access;
using PileController.Panel.Commands;

namespace PileController.Panel.Guard;

/// <summary>A line of the journal of access.</summary>
internal sealed record AccessLine(long UtcMs, int OffsetMinutes, string? Who, string From, string? By, string What, bool Done, int Status, string? Why, int Times);

/// <summary><c>GET /api/access</c>: who came from where and wanted what, the newest first.</summary>
internal static class AccessApi
{
    private const int Usual = 50;
    private const int Most = 400;

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/access", Get).Needs(Scope.Steer);

    private static Ok<AccessLine[]> Get(AccessDesk desk, PanelSetup setup, int? limit) =>
        limit is < 1 or > Most
            ? throw BodyFields.Fault("limit", $"{limit}", $"a whole number from 1 to {Most}")
            : TypedResults.Ok(desk.Journal.Newest(limit ?? Usual).Select(e =>
                new AccessLine(e.AtUtcMilliseconds, setup.OffsetMinutesAt(e.AtUtcMilliseconds), e.Who, e.From, e.By, e.What, e.Done, e.Status, e.Why, e.Times)).ToArray());
}
