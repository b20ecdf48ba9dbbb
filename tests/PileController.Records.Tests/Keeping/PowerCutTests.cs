using Microsoft.Extensions.Time.Testing;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Storage;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

public sealed class PowerCutTests
{
    private const int Ticks = 400;
    private static readonly List<TickEntry> History = TrialTicks.FirstLearned(Ticks, seed: 5);

    [Fact]
    public void Keeper_PowerCutAnywhere_LosesNothingAcknowledged()
    {
        int steps = Run(new SimulatedDisk()).Disk.Steps;
        Assert.True(steps > 250, $"Only {steps} places to cut.");
        for (int cut = 1; cut <= steps; cut++)
        {
            SimulatedDisk disk = new() { CutAt = cut };
            (_, long acknowledged) = Run(disk);

            SimulatedDisk after = disk.AfterCut(new Random(cut));

            AssertWhole(after, acknowledged, cut);
        }
    }

    [Fact]
    public void Keeper_PowerCutTwice_LosesNothingAcknowledged()
    {
        for (int trial = 0; trial < 100; trial++)
        {
            Random random = new(trial);
            SimulatedDisk disk = new() { CutAt = random.Next(20, 300) };
            (_, long acknowledged) = Run(disk);
            SimulatedDisk second = disk.AfterCut(random);
            second.CutAt = random.Next(1, 150);
            acknowledged = Math.Max(acknowledged, Run(second).Acknowledged);

            AssertWhole(second.AfterCut(random), acknowledged, trial);
        }
    }

    [Fact]
    public void Keeper_KilledThenPowerCut_LosesNothingItFoundAgain()
    {
        for (int kill = 20; kill < 300; kill += 2)
        {
            SimulatedDisk disk = Run(new SimulatedDisk { CutAt = kill }).Disk.AfterKill();
            RecordKeeper keeper = Open(disk);
            long acknowledged = keeper.SafeSequence;

            AssertWhole(disk.AfterCut(new Random(kill)), acknowledged, kill);
        }
    }

    [Fact]
    public void Keeper_PowerCutWhileHistoryIsWritten_LeavesWholeCommits()
    {
        int steps = RunBulk(new SimulatedDisk()).Disk.Steps;
        Assert.True(steps > 60, $"Only {steps} places to cut.");
        for (int cut = 1; cut <= steps; cut++)
        {
            (SimulatedDisk disk, long acknowledged) = RunBulk(new SimulatedDisk { CutAt = cut });

            AssertWhole(disk.AfterCut(new Random(cut)), acknowledged, cut);
        }
    }

    private static (SimulatedDisk Disk, long Acknowledged) RunBulk(SimulatedDisk disk) => CutTrial.Run(disk, Open, keeper =>
    {
        keeper.BeginBulk();
        foreach (TickEntry tick in History)
        {
            keeper.Keep(tick);
        }

        keeper.EndBulk();
        Assert.True(keeper.SafeSequence == History.Count || disk.Steps >= disk.CutAt);
    });

    // The run commits to the store every 40 ticks and begins a new file at 360, so the cuts fall into every stage.
    private static (SimulatedDisk Disk, long Acknowledged) Run(SimulatedDisk disk) =>
        CutTrial.Run(disk, Open, keeper => CutTrial.Write(keeper, History));

    private static RecordKeeper Open(SimulatedDisk disk) => new(
        disk, new RecordOptions { DataDirectory = "simulated", BlockTicks = 40, BulkCommitTicks = 80, FileTicks = 360 }, new FakeTimeProvider(), new Faults());

    private static void AssertWhole(SimulatedDisk disk, long acknowledged, int trial)
    {
        Faults faults = new();
        int torn = TailFile.Peek(disk).TornBytes;
        using (RecordKeeper keeper = new(
            disk, new RecordOptions { DataDirectory = "simulated", BlockTicks = 40 }, new FakeTimeProvider(), faults))
        {
            Assert.True(keeper.SafeSequence >= acknowledged, $"Cut {trial}: {keeper.SafeSequence} of {acknowledged} came back.");
            Assert.Equal(CutTrial.SaidOfTorn(torn), faults.Text);
            SameMemory.Assert(
                keeper.LastSequence == 0 ? null : History[(int)keeper.LastSequence - 1].MemoryAfter, keeper.LastMemory());
            Assert.Equal(
                History.Take((int)keeper.LastSequence).Where(CutTrial.IsDecision).Select(tick => tick.Decision.Sequence),
                keeper.Batches().SelectMany(b => b.Lines()).Select(line => line.Sequence));
        }

        using RecordReader reader = RecordReader.Open(disk);
        VerifyReport report = RecordVerifier.Check(reader.Contents, reader.Problems);
        Assert.Empty(report.Problems);
        Assert.True(report.Ticks >= acknowledged);
        Assert.Empty(disk.Quarantined);
    }
}
