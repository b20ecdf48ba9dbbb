using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Panel.Commands;

namespace PileController.Panel.Planning;

/// <summary>
/// <c>GET /api/plan/ahead</c>: how a run of seasons stands; <c>POST</c> starts one, <c>DELETE</c> gives it up. Nothing of
/// it reaches the rig.
/// </summary>
internal static class AheadApi
{
    // Two hundred take a small board most of an hour, and more tell hardly more.
    private const int MostSeasons = 200;

    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/plan/ahead", (AheadDesk desk) => TypedResults.Ok(desk.Body));
        api.MapPost("/plan/ahead", StartAsync);
        api.MapDelete("/plan/ahead", Cancel);
    }

    private static async Task<IResult> StartAsync(HttpRequest request, AheadDesk desk)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "seasons");
        double seasons = body.Number("seasons", 1, MostSeasons);
        if (seasons != Math.Floor(seasons))
        {
            throw BodyFields.Fault("seasons", seasons.ToString("R", System.Globalization.CultureInfo.InvariantCulture), $"a whole number from 1 to {MostSeasons}");
        }

        return desk.TryStart((int)seasons)
            ? TypedResults.Accepted((string?)null, desk.Body)
            : Answers.Refused(StatusCodes.Status409Conflict, "A run is under way", "Seasons are being run already; wait for them or give them up first.");
    }

    private static Accepted Cancel(AheadDesk desk)
    {
        desk.Cancel();
        return TypedResults.Accepted((string?)null);
    }
}
