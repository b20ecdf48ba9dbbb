using PileController.Records.Packing;

namespace PileController.Records.Keeping;

/// <summary>
/// Blocks read lately, still packed (about 9 kB each), so that the panel's charts do not read the same pages again.
/// A block never changes once it is stored. Checks go to the disk and past this.
/// </summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class BlockCache(int mostBlocks)
{
    private readonly Dictionary<long, PackedBatch> _blocks = [];
    private readonly Queue<long> _order = [];

    /// <summary>The ticks of a stored batch.</summary>
    /// <exception cref="InvalidDataException">It is damaged.</exception>
    public PackedBatch Open(StoredBatch stored)
    {
        long key = stored.Head.FirstSequence;
        if (_blocks.TryGetValue(key, out PackedBatch? block) && block.Head == stored.Head)
        {
            return block;
        }

        block = stored.Batch();
        if (_blocks.TryAdd(key, block))
        {
            _order.Enqueue(key);
        }
        else
        {
            _blocks[key] = block;
        }

        if (_order.Count > mostBlocks)
        {
            _blocks.Remove(_order.Dequeue());
        }

        return block;
    }
}
