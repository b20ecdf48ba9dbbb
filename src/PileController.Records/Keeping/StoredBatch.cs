using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>A batch somewhere in the record, opened when it is asked for.</summary>
/// <param name="Head">What is known without opening it.</param>
/// <param name="Batch">Opens its ticks; throws <see cref="InvalidDataException"/> when they are damaged.</param>
/// <param name="Lines">Opens the lines of its decisions, oldest first.</param>
/// <param name="Where">Where it lies, for messages.</param>
internal sealed record StoredBatch(
    BatchHead Head, Func<PackedBatch> Batch, Func<IReadOnlyList<DecisionLine>> Lines, string Where)
{
    /// <summary>One that lies in memory, or in the tail.</summary>
    public static StoredBatch Of(PackedTicks pack) =>
        new(pack.Batch.Head, () => pack.Batch, () => pack.Lines?.All() ?? [], "tail");

    /// <summary>One that lies in a file.</summary>
    public static StoredBatch Of(RecordFile file, BatchHead head) => new(
        head, () => file.Block(head.FirstSequence), () => file.LinesOf(head.FirstSequence), file.Name);

    /// <summary>Says that it is damaged.</summary>
    public string Damage(Exception exception) =>
        $"Tick {Head.FirstSequence} to {Head.LastSequence} in '{Where}': {exception.Message}";
}
