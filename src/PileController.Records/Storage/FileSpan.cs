using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>What a file holds, told without opening it.</summary>
/// <param name="FirstSequence">Number of its first tick, or 0 for an empty file.</param>
/// <param name="LastSequence">Number of its last tick, or 0.</param>
/// <param name="Ticks">How many ticks its entries span.</param>
/// <param name="LeastUtc">Smallest wall time in it, ms.</param>
/// <param name="MostUtc">Largest wall time in it, ms.</param>
internal readonly record struct FileSpan(long FirstSequence, long LastSequence, long Ticks, long LeastUtc, long MostUtc)
{
    /// <summary>With one more entry after all others.</summary>
    public FileSpan With(BatchHead head) => Ticks == 0
        ? new FileSpan(head.FirstSequence, head.LastSequence, head.Count, head.LeastUtc, head.MostUtc)
        : new FileSpan(
            FirstSequence, head.LastSequence, Ticks + head.Count, Math.Min(LeastUtc, head.LeastUtc), Math.Max(MostUtc, head.MostUtc));
}
