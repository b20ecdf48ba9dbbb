using PileController.Records.Keeping;
using PileController.Records.Queries;

namespace PileController.Records.Tests.Queries;

/// <summary>Asks a keeper for a whole series.</summary>
internal static class RecordQueriesProbe
{
    public static IReadOnlyList<SeriesPoint> Samples(RecordKeeper keeper, string series, Action<string> tellDamage) =>
        RecordQueries.Samples(
            keeper.Batches(), new BlockCache(8), series, new TimeRange(0, long.MaxValue), 0, tellDamage);
}
