using CsCheck;
using PileController.Control;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Tests.Packing;

namespace PileController.Records.Tests.Keeping;

public sealed class BlockJoinerTests
{
    private const int BlockTicks = 30;
    private static readonly List<TickEntry> History = TrialTicks.First(400);

    [Fact]
    public void Join_BatchesOfAnySize_KeepEveryTickInOrder() =>
        Gen.Int[1, 50].Array[1, 8].Sample(sizes =>
        {
            List<PackedTicks> packs = Packs(sizes);

            IReadOnlyList<PackedTicks> blocks = BlockJoiner.Join(packs, BlockTicks);

            Assert.Equal(Digests(packs), Digests(blocks));
            Assert.Equal(packs.Sum(p => p.Batch.Text().Commands.Count), blocks.Sum(b => b.Batch.Text().Commands.Count));
            Assert.Equal(
                packs.SelectMany(p => p.Lines?.All() ?? []).Select(line => line.Sequence),
                blocks.SelectMany(b => b.Lines?.All() ?? []).Select(line => line.Sequence));
            long next = 1;
            foreach (PackedTicks block in blocks)
            {
                Assert.Equal(next, block.Batch.FirstSequence);
                next = block.Batch.Head.LastSequence + 1;
                TickEntry first = History[(int)block.Batch.FirstSequence - 1];
                SameMemory.Assert(first.MemoryBefore, RecordJson.ToMemory(block.Batch.Text().MemoryBefore));
            }
        }, iter: 100);

    [Fact]
    public void Join_SmallBatches_MakeBlocksOfTheAskedSize()
    {
        IReadOnlyList<PackedTicks> blocks = BlockJoiner.Join(Packs([.. Enumerable.Repeat(7, 20)]), BlockTicks);

        Assert.Equal([35, 35, 35, 35], blocks.Select(block => block.Batch.Count));
    }

    [Fact]
    public void Join_AtAGapOrARestart_BeginsANewBlock()
    {
        List<PackedTicks> packs = Packs([5, 5, 5, 5]);
        Memory changed = History[14].MemoryAfter with { Totals = default };
        PackedTicks restarted = PackedBatchTests.PackOf([.. TrialTicks.From(changed, 2).Take(5)], squeeze: false);

        Assert.Equal([10, 5], BlockJoiner.Join([packs[0], packs[1], packs[3]], BlockTicks).Select(b => b.Batch.Count));
        Assert.Equal([15, 5], BlockJoiner.Join([packs[0], packs[1], packs[2], restarted], BlockTicks).Select(b => b.Batch.Count));
    }

    private static List<PackedTicks> Packs(int[] sizes)
    {
        List<PackedTicks> packs = [];
        int at = 0;
        foreach (int size in sizes)
        {
            packs.Add(PackedBatchTests.PackOf(History.GetRange(at, size), squeeze: false));
            at += size;
        }

        return packs;
    }

    private static List<long> Digests(IReadOnlyList<PackedTicks> packs) =>
        [.. packs.SelectMany(pack => pack.Batch.Column(TickColumns.Digest))];
}
