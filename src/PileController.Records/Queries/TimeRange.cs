using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Queries;

/// <summary>A stretch of wall time.</summary>
/// <param name="From">First moment, inclusive, UTC ms.</param>
/// <param name="To">Last moment, exclusive, UTC ms.</param>
internal readonly record struct TimeRange(long From, long To)
{
    /// <summary>Whether a moment lies in it.</summary>
    public bool Holds(long utcMilliseconds) => utcMilliseconds >= From && utcMilliseconds < To;

    /// <summary>All of it.</summary>
    public static TimeRange All => new(long.MinValue, long.MaxValue);

    /// <summary>Whether some tick may lie in it.</summary>
    public bool Touches(BatchHead head) => head.Touches(From, To);

    /// <summary>Whether some tick of a file may lie in it.</summary>
    public bool Touches(FileSpan span) => span.Ticks > 0 && span.MostUtc >= From && span.LeastUtc < To;
}
