using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Storage;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

/// <summary>Power cuts while days are summed up, files are closed and old ones deleted.</summary>
public sealed class DayPowerCutTests
{
    private const int Ticks = 260;
    private static readonly List<TickEntry> History = TrialTicks.First(Ticks, seed: 5);

    [Fact]
    public void Keeper_PowerCutAnywhere_SummariesAndTicksAgreeAndNothingAcknowledgedIsLost()
    {
        int steps = Run(new SimulatedDisk()).Disk.Steps;
        Assert.True(steps > 900, $"Only {steps} places to cut.");
        for (int cut = 1; cut <= steps; cut += 2)
        {
            (SimulatedDisk disk, long acknowledged) = Run(new SimulatedDisk { CutAt = cut });

            AssertWhole(disk.AfterCut(new Random(cut)), acknowledged, cut);
        }
    }

    // The rest is written after the cut, so that what was left half done has to be taken up.
    private static void AssertWhole(SimulatedDisk disk, long acknowledged, int cut)
    {
        Faults faults = new();
        int torn = TailFile.Peek(disk).TornBytes;
        using (RecordKeeper keeper = SmallRecord.Open(disk, faults: faults))
        {
            Assert.True(keeper.SafeSequence >= acknowledged, $"Cut {cut}: {keeper.SafeSequence} of {acknowledged} came back.");
            Assert.Equal(History.Take((int)keeper.LastSequence).Count(CutTrial.IsDecision), SmallRecord.Lines(keeper.Contents()).Count);
            CutTrial.Write(keeper, History);
            Assert.Equal(CutTrial.SaidOfTorn(torn), faults.Text);
        }

        VerifyReport report = SmallRecord.Verify(disk);
        Assert.True(report.IsClean, $"Cut {cut}: {string.Join(" ", report.Problems)}");
        Assert.Equal((Ticks, Ticks / SmallRecord.Options.DayTicks), ((int)report.LastSequence, report.Days));
        Assert.True(report.Ticks >= SmallRecord.Options.KeepTicks);
        Assert.Empty(disk.Quarantined);
        using RecordReader reader = RecordReader.Open(disk);
        Assert.Equal(
            History.Where(CutTrial.IsDecision).Select(tick => tick.Decision.Sequence),
            SmallRecord.Lines(reader.Contents).Select(line => line.Sequence));
        Assert.Equal(Ticks, SmallRecord.Samples(reader.Contents, "mode", 86_400_000).Sum(point => point.Count));
    }

    private static (SimulatedDisk Disk, long Acknowledged) Run(SimulatedDisk disk) =>
        CutTrial.Run(disk, some => SmallRecord.Open(some), keeper => CutTrial.Write(keeper, History));
}
