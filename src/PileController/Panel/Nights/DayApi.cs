using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Records;
using PileController.Records.Accounts;
using PileController.Service;

namespace PileController.Panel.Nights;

/// <summary><c>GET /api/day</c>: the last 24 hours in a few figures, or 204 before the first tick.</summary>
internal static class DayApi
{
    private const long DayMilliseconds = 86_400_000;

    // Two days of hours, as the book asks: the record's thread has other questions to answer.
    private const int BlocksAtATime = 48;

    // A block may have begun before the day.
    private const long MostTicksInABlock = 360;

    private static readonly string[] Series = ["house", "waterDraw", "airDraw", "pumpDuty"];

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/day", GetAsync);

    private static async Task<Results<Ok<LastDay>, NoContent>> GetAsync(
        IPileRecord record, PanelFeed feed, PanelSetup setup, CancellationToken cancellation)
    {
        if (feed.Latest?.Decision is not { } decision)
        {
            return TypedResults.NoContent();
        }

        Control.Instant at = decision.At;
        // Whole buckets: half a minute at an end would be told as a minute without a record.
        long to = at.UtcMilliseconds / LastDay.BucketMilliseconds * LastDay.BucketMilliseconds;
        IReadOnlyList<IReadOnlyList<SeriesPoint>> found = await record.SamplesAsync(
            Series, to - DayMilliseconds, to, LastDay.BucketMilliseconds, cancellation);
        IReadOnlyList<BlockAccount> blocks = await BlocksAsync(record, decision.Sequence, setup, cancellation);
        return TypedResults.Ok(LastDay.Of(
            found[0], found[1], found[2], found[3], DayMilliseconds,
            MinimumThen.Of(blocks, setup.ControlOf, setup.Control.HouseMinimumC), at.OffsetMinutes));
    }

    private static async Task<IReadOnlyList<BlockAccount>> BlocksAsync(
        IPileRecord record, long sequence, PanelSetup setup, CancellationToken cancellation)
    {
        // Only the settings of the blocks are looked at, not what they are counted by.
        AccountRules rules = new(setup.Control.TickSeconds, setup.Control.HeapFloorC, setup.Control.HouseMinimumC, setup.OffsetMinutesAt);
        long after = Math.Max(0, sequence - (long)(DayMilliseconds / 1000 / setup.Control.TickSeconds) - MostTicksInABlock);
        List<BlockAccount> blocks = [];
        IReadOnlyList<BlockAccount> more;
        do
        {
            more = await record.AccountsAsync(after, BlocksAtATime, _ => rules, cancellation);
            blocks.AddRange(more);
            after = more.Count == 0 ? after : more[^1].LastSequence;
        }
        while (more.Count == BlocksAtATime);

        return blocks;
    }
}
