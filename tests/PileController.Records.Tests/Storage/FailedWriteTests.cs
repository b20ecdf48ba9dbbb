using PileController.Records.Crash;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Tests.Packing;

namespace PileController.Records.Tests.Storage;

public sealed class FailedWriteTests
{
    private static readonly IReadOnlyList<PackedTicks> Packs =
        [.. TrialTicks.First(200).Chunk(50).Select(ticks => PackedBatchTests.PackOf(ticks, squeeze: false))];

    [Fact]
    public void Write_ThatFails_ThrowsAndLeavesNothingThatEndsTheProcess()
    {
        int steps = WriteOnAThreadOfItsOwn(int.MaxValue, out Exception? none);
        Assert.Null(none);
        Assert.True(steps > 10, $"Only {steps} writes to fail.");
        for (int fails = 1; fails <= steps; fails++)
        {
            WriteOnAThreadOfItsOwn(fails, out Exception? error);

            Assert.IsType<IOException>(error);

            // Without a thread that still knows it, what LiteDB left is finalized now, and not some day.
            Finalizers.Run();
        }
    }

    [Fact]
    public void Write_ThatFailed_IsThereWholeOrNotAtAllAndCanBeDoneAgain()
    {
        int steps = WriteOnAThreadOfItsOwn(int.MaxValue, out _);
        for (int fails = 1; fails <= steps; fails++)
        {
            SimulatedDisk disk = new();
            using RecordFile file = RecordFile.Create(disk, 1);
            disk.FullFrom = disk.Steps + fails;
            Assert.Throws<IOException>(() => file.Write(Packs));
            disk.FullFrom = int.MaxValue;

            file.Reach();

            Assert.Contains(file.Heads.Count, new[] { 0, Packs.Count });
            if (file.Heads.Count == 0)
            {
                file.Write(Packs);
            }

            Assert.Equal(Packs.Select(pack => pack.Batch.Bytes), file.Heads.Select(head => file.Block(head.FirstSequence).Bytes));
        }
    }

    private static int WriteOnAThreadOfItsOwn(int fails, out Exception? error)
    {
        Exception? thrown = null;
        int steps = 0;
        Thread thread = new(() =>
        {
            SimulatedDisk disk = new();
            using RecordFile file = RecordFile.Create(disk, 1);
            int before = disk.Steps;
            disk.FullFrom = fails == int.MaxValue ? fails : before + fails;
            thrown = Record.Exception(() => file.Write(Packs));
            steps = disk.Steps - before;
        });
        thread.Start();
        thread.Join();
        error = thrown;
        return steps;
    }
}
