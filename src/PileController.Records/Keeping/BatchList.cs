using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>Puts the batches of store and tail in one list.</summary>
internal static class BatchList
{
    /// <summary>All batches, oldest first. What the store has already is not taken from the tail again.</summary>
    public static IReadOnlyList<StoredBatch> Of(IReadOnlyList<RecordFile> files, IReadOnlyList<PackedTicks> tail)
    {
        List<StoredBatch> all = [];
        long last = 0;
        foreach (RecordFile file in files)
        {
            foreach (BatchHead head in file.Heads)
            {
                all.Add(new StoredBatch(
                    head, () => file.Block(head.FirstSequence), () => file.LinesOf(head.FirstSequence), file.Name));
                last = Math.Max(last, head.LastSequence);
            }
        }

        all.AddRange(tail.Where(pack => pack.Batch.FirstSequence > last).Select(StoredBatch.Of));
        return all;
    }
}
