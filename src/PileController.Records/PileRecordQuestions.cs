using PileController.Control.Decisions;

namespace PileController.Records;

/// <summary>Shorter ways to ask a record.</summary>
public static class PileRecordQuestions
{
    /// <summary>One series; see <see cref="IPileRecord.SamplesAsync"/>.</summary>
    /// <param name="record">The record.</param>
    /// <param name="series">Its name.</param>
    /// <param name="fromUtcMilliseconds">First moment, inclusive.</param>
    /// <param name="toUtcMilliseconds">Last moment, exclusive.</param>
    /// <param name="stepMilliseconds">Bucket width; 0 for every tick.</param>
    /// <param name="cancellation">Cancels the query.</param>
    /// <exception cref="ArgumentException">No such series.</exception>
    public static async Task<IReadOnlyList<SeriesPoint>> SamplesAsync(
        this IPileRecord record, string series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds,
        CancellationToken cancellation) =>
        (await record.SamplesAsync([series], fromUtcMilliseconds, toUtcMilliseconds, stepMilliseconds, cancellation).ConfigureAwait(false))[0];

    /// <summary>Decisions by kind, newest first; see <see cref="IPileRecord.DecisionsAsync"/>.</summary>
    /// <param name="record">The record.</param>
    /// <param name="fromUtcMilliseconds">First moment, inclusive.</param>
    /// <param name="toUtcMilliseconds">Last moment, exclusive.</param>
    /// <param name="kinds">Only decisions with any of these kinds; null for all.</param>
    /// <param name="limit">At most so many.</param>
    /// <param name="cancellation">Cancels the query.</param>
    public static Task<IReadOnlyList<DecisionLine>> DecisionsAsync(
        this IPileRecord record, long fromUtcMilliseconds, long toUtcMilliseconds, DecisionKinds? kinds, int limit,
        CancellationToken cancellation) =>
        record.DecisionsAsync(new DecisionAsk(fromUtcMilliseconds, toUtcMilliseconds) { Kinds = kinds, Limit = limit }, cancellation);
}
