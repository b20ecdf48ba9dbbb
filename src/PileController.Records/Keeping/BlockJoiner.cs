using PileController.Records.Packing;

namespace PileController.Records.Keeping;

/// <summary>Joins small batches that follow each other into blocks.</summary>
internal static class BlockJoiner
{
    /// <summary>
    /// Blocks, in order, each closed as soon as it has <paramref name="blockTicks"/> ticks or more; a batch is never
    /// split. A new one begins at a gap in the sequence, where a tick was not given what the one before handed on
    /// (a restart), where the origin changes, and behind a batch that cannot be decided again.
    /// </summary>
    public static IReadOnlyList<PackedTicks> Join(IReadOnlyList<PackedTicks> packs, int blockTicks)
    {
        List<PackedTicks> blocks = [];
        BatchBuilder? builder = null;
        long nextSequence = 0;
        BatchText? before = null;
        foreach (PackedTicks pack in packs)
        {
            BatchText text = pack.Batch.Text();
            bool whole = pack.Batch.Count >= blockTicks;
            bool goesOn = !whole
                && builder is { Count: > 0 }
                && pack.Batch.FirstSequence == nextSequence
                && builder.Count < blockTicks
                && text.Origin == before!.Origin
                && text.IsBeforeLost == before.IsBeforeLost
                && text.MemoryBefore.GetRawText() == before.MemoryAfter.GetRawText();
            if (!goesOn)
            {
                Close(builder, blocks);
            }

            if (whole)
            {
                blocks.Add(pack);
            }
            else
            {
                builder ??= new BatchBuilder(text.Origin, 2 * blockTicks);
                builder.Add(pack);
            }

            nextSequence = pack.Batch.Head.LastSequence + 1;
            before = text;
        }

        Close(builder, blocks);
        return blocks;
    }

    private static void Close(BatchBuilder? builder, List<PackedTicks> blocks)
    {
        if (builder is { Count: > 0 })
        {
            blocks.Add(builder.Pack(squeeze: true));
            builder.Clear();
        }
    }
}
