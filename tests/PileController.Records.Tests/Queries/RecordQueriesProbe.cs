using PileController.Records.Keeping;
using PileController.Records.Queries;

namespace PileController.Records.Tests.Queries;

/// <summary>Asks a keeper for a whole series.</summary>
internal static class RecordQueriesProbe
{
    public static IReadOnlyList<SeriesPoint> Samples(RecordKeeper keeper, string series, Action<string> tellDamage) =>
        RecordQueries.Samples(
            keeper.Contents(), new QueryCache(), [series], TimeRange.All, 0, tellDamage)[0];
}
