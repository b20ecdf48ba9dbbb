using PileController.Control.Decisions;
using PileController.Control.Modes;

namespace PileController.Control;

/// <summary>
/// All that one tick hands to the next. Immutable; written as JSON at the head of each block of the record, so
/// that a recorded run can be taken up anywhere and replayed to the same bits.
/// </summary>
public sealed record Memory
{
    /// <summary>Number of the last tick.</summary>
    public long Sequence { get; init; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; init; }

    /// <summary>Running totals.</summary>
    public Totals Totals { get; init; }

    /// <summary>A controller that has seen nothing yet.</summary>
    public static Memory Fresh { get; } = new();
}
