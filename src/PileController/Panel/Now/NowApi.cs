using Microsoft.AspNetCore.Http.HttpResults;

namespace PileController.Panel.Now;

/// <summary><c>GET /api/now</c>.</summary>
internal static class NowApi
{
    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/now", Get);

    private static Results<Ok<NowBody>, ProblemHttpResult> Get(NowReport report) =>
        report.Latest() is { } body
            ? TypedResults.Ok(body)
            : Answers.Refused(StatusCodes.Status503ServiceUnavailable, "No tick yet", "The controller has not finished its first tick.");
}
