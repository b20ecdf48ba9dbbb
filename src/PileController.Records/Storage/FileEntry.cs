using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>What is filed under one number: a head, and sealed bytes for each collection of its file.</summary>
/// <param name="Head">Which ticks.</param>
/// <param name="Parts">In the order of the kind's collections; null where there is nothing to file.</param>
internal sealed record FileEntry(BatchHead Head, IReadOnlyList<byte[]?> Parts)
{
    /// <summary>What its decision lines are marked with.</summary>
    public LineMarks Marks { get; init; } = LineMarks.Unknown;

    /// <summary>The entry of a block of ticks.</summary>
    public static FileEntry Of(PackedTicks pack) => new(pack.Batch.Head, [pack.Batch.Bytes, pack.Lines?.Bytes]);
}
