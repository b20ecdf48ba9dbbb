using PileController.Records.Keeping;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>Answers questions from what a record holds. A damaged part is left out and told.</summary>
internal static class RecordQueries
{
    /// <summary>Some series; see <see cref="IPileRecord.SamplesAsync"/>.</summary>
    public static IReadOnlyList<IReadOnlyList<SeriesPoint>> Samples(
        RecordContents contents, QueryCache cache, IReadOnlyList<string> series, TimeRange range, long stepMilliseconds,
        Action<string> tellDamage)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stepMilliseconds);
        return new SamplesQuery(contents, cache, range, stepMilliseconds, tellDamage).Answer([.. series.Select(SummarySeries.Find)]);
    }

    /// <summary>Decision lines, newest first; see <see cref="IPileRecord.DecisionsAsync"/>.</summary>
    public static IReadOnlyList<DecisionLine> Decisions(RecordContents contents, DecisionAsk ask, Action<string> tellDamage) =>
        new DecisionsQuery(contents, ask, tellDamage).Answer();
}
