using PileController.Control.Decisions;
using PileController.Control.Modes;

namespace PileController.Records;

/// <summary>Which decisions are asked for; all conditions have to hold.</summary>
/// <param name="FromUtcMilliseconds">First moment, inclusive.</param>
/// <param name="ToUtcMilliseconds">Last moment, exclusive.</param>
public sealed record DecisionAsk(long FromUtcMilliseconds, long ToUtcMilliseconds)
{
    /// <summary>Only decisions with any of these kinds; null for all.</summary>
    public DecisionKinds? Kinds { get; init; }

    /// <summary>Only decisions in this mode; null for any.</summary>
    public Mode? Mode { get; init; }

    /// <summary>Only decisions with this curb; null for any.</summary>
    public Curb? Curb { get; init; }

    /// <summary>Only decisions whose sentence or note contains this, whatever its case; null for any.</summary>
    public string? Text { get; init; }

    /// <summary>At most so many, 0 or more.</summary>
    public int Limit { get; init; } = int.MaxValue;

    internal bool Holds(DecisionLine line) =>
        line.UtcMilliseconds >= FromUtcMilliseconds && line.UtcMilliseconds < ToUtcMilliseconds
        && (Kinds is null || (line.Kinds & Kinds) != 0)
        && (Mode is null || line.Mode == Mode)
        && (Curb is null || line.Curb == Curb)
        && (Text is null || Contains(line.Why) || Contains(line.Note));

    private bool Contains(string? text) => text?.Contains(Text!, StringComparison.OrdinalIgnoreCase) ?? false;
}
