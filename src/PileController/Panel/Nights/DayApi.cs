using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Records;
using PileController.Service;

namespace PileController.Panel.Nights;

/// <summary><c>GET /api/day</c>: the last 24 hours in a few figures, or 204 before the first tick.</summary>
internal static class DayApi
{
    private const long DayMilliseconds = 86_400_000;

    private static readonly string[] Series = ["house", "waterDraw", "airDraw", "pumpDuty"];

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/day", GetAsync);

    private static async Task<Results<Ok<LastDay>, NoContent>> GetAsync(
        IPileRecord record, PanelFeed feed, PanelSetup setup, CancellationToken cancellation)
    {
        if (feed.Latest?.Decision.At is not { } at)
        {
            return TypedResults.NoContent();
        }

        // Whole buckets: half a minute at an end would be told as a minute without a record.
        long to = at.UtcMilliseconds / LastDay.BucketMilliseconds * LastDay.BucketMilliseconds;
        IReadOnlyList<IReadOnlyList<SeriesPoint>> found = await record.SamplesAsync(
            Series, to - DayMilliseconds, to, LastDay.BucketMilliseconds, cancellation);
        return TypedResults.Ok(LastDay.Of(
            found[0], found[1], found[2], found[3], DayMilliseconds, setup.Control.HouseMinimumC, at.OffsetMinutes));
    }
}
