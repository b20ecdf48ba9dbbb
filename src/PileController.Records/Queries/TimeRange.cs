using PileController.Records.Keeping;

namespace PileController.Records.Queries;

/// <summary>A stretch of wall time.</summary>
/// <param name="From">First moment, inclusive, UTC ms.</param>
/// <param name="To">Last moment, exclusive, UTC ms.</param>
internal readonly record struct TimeRange(long From, long To)
{
    /// <summary>Whether a moment lies in it.</summary>
    public bool Holds(long utcMilliseconds) => utcMilliseconds >= From && utcMilliseconds < To;

    /// <summary>Whether some tick of a batch may lie in it.</summary>
    public bool Touches(StoredBatch batch) => batch.Head.Touches(From, To);
}
