using Microsoft.Extensions.Time.Testing;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

/// <summary>Room that runs out at some write: <c>PILE_FULL=1</c> tries every single one.</summary>
public sealed class FullDiskTests
{
    private static readonly int EveryNth = Trials.Of("PILE_FULL", 7);
    private static readonly List<TickEntry> History = TrialTicks.FirstLearned(420, seed: 8);

    [Fact]
    public void Keeper_DiskFullFromAnyWriteOn_ResumesAndLosesNothing()
    {
        (int first, int last) = StepsOfAWholeRun();
        Assert.True(last - first > 250, $"Only {last - first} writes to fail.");
        for (int full = first; full <= last; full += EveryNth)
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
                    // Room comes back at the first full ten after it ran out.
                    failed |= faults.Text is not null;
                    disk.FullFrom = failed && tick.Decision.Sequence % 10 == 0 ? int.MaxValue : disk.FullFrom;
                    keeper.Keep(tick);
                    keeper.SyncIfDue();
                    if (failed && disk.FullFrom == int.MaxValue && tick.Decision.Sequence % 10 < 2 && tick.Decision.Sequence % 20 < 10)
                    {
                        AssertComesBackAsItWas(disk.AfterCut(new Random(full)), keeper.SafeSequence);
                    }
                }

                failed |= faults.Text is not null;
                disk.FullFrom = int.MaxValue;
                keeper.Flush();
                Assert.Equal(History.Count, keeper.SafeSequence);
                Assert.Equal(0, keeper.Dropped);
            }

            Assert.True(failed, $"The disk was never found full from step {full} on.");
            AssertWhole(disk);
        }
    }

    [Fact]
    public void Keeper_OneWriteFails_ResumesAndLosesNothing()
    {
        (int first, int last) = StepsOfAWholeRun();
        for (int fails = first; fails <= last; fails += EveryNth)
        {
            SimulatedDisk disk = new();
            FakeTimeProvider time = new();
            Faults faults = new();
            using (RecordKeeper keeper = new(disk, Options(5000), time, faults))
            {
                disk.FullAt = fails;
                foreach (TickEntry tick in History)
                {
                    time.Advance(TimeSpan.FromSeconds(10));
                    keeper.Keep(tick);
                    keeper.SyncIfDue();
                }

                keeper.Flush();
                Assert.Equal((History.Count, 0), (keeper.SafeSequence, keeper.Dropped));
                Assert.False(faults.IsFailing);
            }

            AssertWhole(disk);
        }

        // What a failed write leaves behind may not end the process when it is collected.
        Finalizers.Run();
    }

    [Fact]
    public void Keeper_DiskFullWhileItEndsOrBegins_LosesNothing()
    {
        SimulatedDisk whole = new();
        RecordKeeper counted = Kept(whole, 250);
        int before = whole.Steps;
        counted.Dispose();
        for (int full = before + 1; full <= whole.Steps; full++)
        {
            SimulatedDisk disk = new();
            RecordKeeper keeper = Kept(disk, 250);
            disk.FullFrom = full;
            keeper.Dispose();
            disk.FullFrom = int.MaxValue;

            AssertBeginsAtAnyWrite(disk, 250);
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

    private static (int First, int Last) StepsOfAWholeRun()
    {
        SimulatedDisk disk = new();
        using RecordKeeper keeper = new(disk, Options(5000), new FakeTimeProvider(), new Faults());
        int first = disk.Steps + 1;
        foreach (TickEntry tick in History)
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }

        return (first, disk.Steps);
    }

    private static RecordKeeper Kept(SimulatedDisk disk, int ticks)
    {
        RecordKeeper keeper = new(disk, Options(5000), new FakeTimeProvider(), new Faults());
        foreach (TickEntry tick in History.Take(ticks))
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }

        keeper.Flush();
        return keeper;
    }

    // A start that finds the disk full fails as a whole; the next one with room has everything.
    private static void AssertBeginsAtAnyWrite(SimulatedDisk disk, int ticks)
    {
        for (int more = 1; ; more++)
        {
            disk.FullFrom = disk.Steps + more;
            try
            {
                using RecordKeeper keeper = new(disk, Options(5000), new FakeTimeProvider(), new Faults());
                disk.FullFrom = int.MaxValue;
                Assert.Equal(ticks, keeper.SafeSequence);
                SameMemory.Assert(History[ticks - 1].MemoryAfter, keeper.LastMemory());
                break;
            }
            catch (IOException) when (more < 50)
            {
                Assert.Empty(disk.Quarantined);
            }
        }

        disk.FullFrom = int.MaxValue;
        using RecordReader reader = RecordReader.Open(disk);
        VerifyReport report = RecordVerifier.Check(reader.Batches, reader.Problems);
        Assert.Empty(report.Problems);
        Assert.Equal(ticks, report.Ticks);
    }

    private static void AssertWhole(SimulatedDisk disk)
    {
        using RecordReader reader = RecordReader.Open(disk);
        VerifyReport report = RecordVerifier.Check(reader.Batches, reader.Problems);
        Assert.Empty(report.Problems);
        Assert.Equal(History.Count, report.Ticks);
        Assert.Empty(disk.Quarantined);
    }

    private static void AssertComesBackAsItWas(SimulatedDisk disk, long safe)
    {
        using RecordKeeper keeper = new(disk, Options(5000), new FakeTimeProvider(), new Faults());
        Assert.True(keeper.LastSequence >= safe);
        SameMemory.Assert(
            keeper.LastSequence == 0 ? null : History[(int)keeper.LastSequence - 1].MemoryAfter, keeper.LastMemory());
    }

    private static RecordOptions Options(int waitingTicks) =>
        new() { DataDirectory = "simulated", BlockTicks = 40, FileTicks = 360, WaitingTicks = waitingTicks };
}
