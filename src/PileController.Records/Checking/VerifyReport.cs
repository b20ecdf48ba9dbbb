namespace PileController.Records.Checking;

/// <summary>What a check of a record found.</summary>
/// <param name="Blocks">Batches looked at, those in the tail included.</param>
/// <param name="Ticks">Ticks in them.</param>
/// <param name="Decisions">Decision lines.</param>
/// <param name="FirstSequence">First tick, or 0.</param>
/// <param name="LastSequence">Last tick, or 0.</param>
/// <param name="Problems">What is wrong, a sentence each; empty when nothing is.</param>
public sealed record VerifyReport(
    int Blocks, long Ticks, long Decisions, long FirstSequence, long LastSequence, IReadOnlyList<string> Problems)
{
    /// <summary>Days of ticks that have been summed up.</summary>
    public int Days { get; init; }

    /// <summary>True when nothing is wrong.</summary>
    public bool IsClean => Problems.Count == 0;
}
