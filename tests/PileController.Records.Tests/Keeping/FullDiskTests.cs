using Microsoft.Extensions.Time.Testing;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

public sealed class FullDiskTests
{
    private static readonly List<TickEntry> History = TrialTicks.First(300, seed: 8);

    [Fact]
    public void Keeper_DiskFullFromAnyWriteOn_ResumesAndLosesNothing()
    {
        for (int full = 25; full < 220; full += 5)
        {
            SimulatedDisk disk = new();
            FakeTimeProvider time = new();
            Faults faults = new();
            bool failed = false;
            using (RecordKeeper keeper = new(disk, Options(5000), time, faults))
            {
                disk.FullFrom = full;
                foreach (TickEntry tick in History)
                {
                    time.Advance(TimeSpan.FromSeconds(10));
                    // Room comes back twenty ticks after it ran out.
                    failed |= faults.IsFailing;
                    disk.FullFrom = failed && tick.Decision.Sequence % 20 == 0 ? int.MaxValue : disk.FullFrom;
                    keeper.Keep(tick);
                    keeper.SyncIfDue();
                    if (failed && disk.FullFrom == int.MaxValue && tick.Decision.Sequence % 20 < 2)
                    {
                        AssertComesBackAsItWas(disk.AfterCut(new Random(full)), keeper.SafeSequence);
                    }
                }

                disk.FullFrom = int.MaxValue;
                keeper.Flush();
                Assert.Equal(History.Count, keeper.SafeSequence);
                Assert.Equal(0, keeper.Dropped);
            }

            using RecordReader reader = RecordReader.Open(disk);
            VerifyReport report = RecordVerifier.Check(reader.Contents, reader.Problems);
            Assert.Empty(report.Problems);
            Assert.Equal(History.Count, report.Ticks);
            Assert.True(failed, $"The disk was never found full from step {full} on.");
        }
    }

    [Fact]
    public void Keeper_DiskFullForLong_DropsTheNewestCountsThemAndTells()
    {
        SimulatedDisk disk = new();
        FakeTimeProvider time = new();
        Faults faults = new();
        using RecordKeeper keeper = new(disk, Options(360), time, faults);
        disk.FullFrom = 0;
        foreach (TickEntry tick in TrialTicks.First(500))
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }

        Assert.Equal(140, keeper.Dropped);
        Assert.True(faults.IsFailing);
        Assert.Contains("No space left", faults.Text, StringComparison.Ordinal);
        Assert.Throws<IOException>(keeper.Flush);

        disk.FullFrom = int.MaxValue;
        keeper.Flush();

        Assert.Equal(360, keeper.SafeSequence);
        Assert.Null(faults.Text);
    }

    [Fact]
    public void Keeper_WhileItFails_TriesEverMoreRarely()
    {
        SimulatedDisk disk = new();
        FakeTimeProvider time = new();
        using RecordKeeper keeper = new(disk, Options(5000), time, new Faults());
        disk.FullFrom = 0;
        List<int> attempts = [];
        foreach (TickEntry tick in TrialTicks.First(400))
        {
            int before = disk.Steps;
            time.Advance(TimeSpan.FromSeconds(1));
            keeper.Keep(tick);
            keeper.SyncIfDue();
            if (disk.Steps > before)
            {
                attempts.Add((int)tick.Decision.Sequence);
            }
        }

        int[] pauses = [.. attempts.Zip(attempts.Skip(1), (one, next) => next - one)];
        Assert.Equal([1, 2, 4, 8, 16, 32, 60, 60], pauses.Take(8));
    }

    private static void AssertComesBackAsItWas(SimulatedDisk disk, long safe)
    {
        using RecordKeeper keeper = new(disk, Options(5000), new FakeTimeProvider(), new Faults());
        Assert.True(keeper.LastSequence >= safe);
        SameMemory.Assert(
            keeper.LastSequence == 0 ? null : History[(int)keeper.LastSequence - 1].MemoryAfter, keeper.LastMemory());
    }

    private static RecordOptions Options(int waitingTicks) =>
        new() { DataDirectory = "simulated", BlockTicks = 40, WaitingTicks = waitingTicks };
}
