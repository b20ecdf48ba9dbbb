using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Control.Foresight;
using PileController.Service;

namespace PileController.Panel.Nights;

/// <summary>What is said of the house until the next morning. SI, the unit in the key.</summary>
internal sealed record TonightBody(
    double HouseMinimumC, double MinimumP10C, double MinimumP50C, double MinimumP90C, long AtUtcMs, string AtLocalTime,
    double ChanceOfHolding, bool Poor, double? BackupWatts, long? BackupFromUtcMs, long UntilUtcMs, long MadeUtcMs, bool UsesForecast,
    int OffsetMinutes);

/// <summary><c>GET /api/tonight</c>: the statement, or 204 before the first.</summary>
internal static class TonightApi
{
    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/tonight", Get);

    private static Results<Ok<TonightBody>, NoContent> Get(PanelFeed feed, PanelSetup setup)
    {
        if (feed.Latest?.Decision is not { Tonight: { } said } decision)
        {
            return TypedResults.NoContent();
        }

        return TypedResults.Ok(Of(said, setup.Control.HouseMinimumC, decision.At.OffsetMinutes));
    }

    private static TonightBody Of(Tonight said, double minimumC, int offsetMinutes) => new(
        minimumC, said.MinimumP10C, said.MinimumP50C, said.MinimumP90C, said.AtUtcMilliseconds,
        LocalTimes.Text(said.AtUtcMilliseconds, offsetMinutes), said.ChanceOfHolding, said.Poor, said.BackupWatts,
        said.FromUtcMilliseconds, said.UntilUtcMilliseconds, said.MadeUtcMilliseconds, said.UsesForecast, offsetMinutes);
}
