using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records.Accounts;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Storage;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests;

public sealed class LiteRecordTests : IDisposable
{
    private readonly TrialFolder _folder = new();

    private static CancellationToken None => CancellationToken.None;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Open_WhileAnotherHasIt_IsRefusedWithTheFolder()
    {
        await using LiteRecord record = Open();

        RecordInUseException error = Assert.Throws<RecordInUseException>(Open);
        Assert.Contains(_folder.Path, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 6)]
    [InlineData(8641, 6)]
    [InlineData(360, 0)]
    public void Open_OptionOutOfRange_IsRefusedByName(int blockTicks, int syncTicks)
    {
        RecordOptions options = new() { DataDirectory = _folder.Path, BlockTicks = blockTicks, SyncTicks = syncTicks };

        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => LiteRecord.Open(options));
        Assert.Contains(" is ", error.Message, StringComparison.Ordinal);
        Assert.Contains("allowed", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Health_OnADiskThatFillsUp_TellsWhatIsFree()
    {
        SimulatedDisk disk = new();
        await using LiteRecord record = LiteRecord.Open(new RecordOptions { DataDirectory = _folder.Path, SyncTicks = 1 }, disk, TimeProvider.System);
        Assert.Null(record.Health.FreeBytes);

        disk.FullFrom = disk.Steps;
        record.TryAppend(TrialTicks.First(1)[0]);
        await Assert.ThrowsAsync<IOException>(() => record.FlushAsync(None));
        Assert.Equal(0, record.Health.FreeBytes);
        Assert.False(record.Health.Accepting);

        disk.FullFrom = int.MaxValue;
        await record.FlushAsync(None);
        Assert.True(record.Health.Accepting);
        Assert.Null(record.Health.FreeBytes);
    }

    [Fact]
    public void FreeBytes_OfAFolderThatIsGone_IsNotKnown()
    {
        FolderDisk disk = new(Path.Combine(_folder.Path, "gone"));
        Directory.Delete(Path.Combine(_folder.Path, "gone"));
        Assert.Null(disk.FreeBytes());
    }

    [Fact]
    public void FreeBytes_OfAFolder_IsOfTheDiskItLiesOn()
    {
        FolderDisk disk = new(_folder.Path);
        Assert.InRange(disk.FreeBytes()!.Value, 1, new DriveInfo(_folder.Path).TotalSize);
    }

    [Fact]
    public async Task Append_AfterDispose_IsDroppedAndCounted()
    {
        LiteRecord record = Open();
        await record.DisposeAsync();

        Assert.False(record.TryAppend(TrialTicks.First(1)[0]));
        Assert.Equal(1, record.Health.DroppedTicks);
        await Assert.ThrowsAsync<ObjectDisposedException>(() => record.FlushAsync(None));
    }

    [Fact]
    public async Task Append_SameNumberAgain_IsDroppedCountedAndTold()
    {
        await using LiteRecord record = Open();
        List<TickEntry> ticks = TrialTicks.First(3);
        foreach (TickEntry tick in ticks.Append(ticks[1]))
        {
            record.TryAppend(tick);
        }

        await record.FlushAsync(None);

        Assert.Equal(1, record.Health.DroppedTicks);
        Assert.Contains("Tick 2 came after tick 3", record.Health.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Accounts_PumpThatComesAndGoes_CountItsStartsWithinABlock()
    {
        await using LiteRecord record = Open();
        bool[] on = [false, true, true, false, false, true, false, true, true];
        foreach ((TickEntry tick, bool runs) in TrialTicks.First(on.Length).Zip(on))
        {
            record.TryAppend(tick with { Decision = tick.Decision with { Outputs = new Outputs(runs ? 0.4 : 0, 1, 0, false) } });
        }

        BlockAccount block = Assert.Single(await record.AccountsAsync(0, 9, _ => new AccountRules(10, 45, 5, _ => 0), None));
        BlockAccount rest = Assert.Single(await record.AccountsAsync(2, 9, _ => new AccountRules(10, 45, 5, _ => 0), None));

        Assert.Equal((3, 50.0, false, true), (block.Figures.PumpStarts, block.Figures.RunningSeconds, block.PumpOnFirst, block.PumpOnLast));
        Assert.Equal((3, 40.0, true, true), (rest.Figures.PumpStarts, rest.Figures.RunningSeconds, rest.PumpOnFirst, rest.PumpOnLast));
    }

    [Fact]
    public async Task Reopen_GoesOnWhereItEnded()
    {
        List<TickEntry> ticks = TrialTicks.First(500);
        for (int session = 0; session < 5; session++)
        {
            await using LiteRecord record = Open();
            Memory? memory = await record.LastMemoryAsync(None);
            SameMemory.Assert(session == 0 ? null : ticks[(session * 100) - 1].MemoryAfter, memory);
            foreach (TickEntry tick in ticks.GetRange(session * 100, 100))
            {
                record.TryAppend(tick);
            }
        }

        VerifyReport report = RecordVerifier.Check(_folder.Path);

        Assert.Empty(report.Problems);
        Assert.Equal((500, 1, 500), (report.Ticks, report.FirstSequence, report.LastSequence));
        Assert.Equal(ticks.Count(t => t.Decision.Kinds != DecisionKinds.Steady), report.Decisions);
    }

    [Fact]
    public async Task History_ThenLiveTicks_IsOneCleanRecord()
    {
        List<TickEntry> ticks = TrialTicks.First(20_000);
        await using (LiteRecord record = Open())
        {
            await record.AppendHistoryAsync(ticks.Take(19_950), None);
            Assert.Equal(19_950, record.Health.LastSequence);
            foreach (TickEntry tick in ticks.Skip(19_950))
            {
                Assert.True(record.TryAppend(tick));
            }

            await record.FlushAsync(None);
            VerifyReport live = await record.VerifyAsync(None);
            Assert.Empty(live.Problems);
            Assert.Equal(20_000, live.Ticks);
            Assert.Equal(0, record.Health.DroppedTicks);
        }

        ReplayReport replay = RecordReplayer.Run(_folder.Path, TrialTicks.Step);
        Assert.Equal((20_000, 20_000), (replay.Ticks, replay.Identical));
        Assert.Null(replay.FirstDifference);
    }

    [Fact]
    public async Task Append_FasterThanTheOwner_NeverBlocksAndCountsEachDrop()
    {
        RecordOptions options = new() { DataDirectory = _folder.Path, QueueTicks = 16 };
        await using LiteRecord record = LiteRecord.Open(options);
        List<TickEntry> ticks = TrialTicks.First(20_000);
        int refused = ticks.Count(tick => !record.TryAppend(tick));

        await record.FlushAsync(None);

        Assert.Equal(refused, record.Health.DroppedTicks);
        VerifyReport report = await record.VerifyAsync(None);
        Assert.Equal(ticks.Count - refused, report.Ticks);
        Assert.Equal(refused > 0, report.Problems.Count > 0 || report.LastSequence < ticks.Count);
    }

    [Fact]
    public async Task Ask_Cancelled_Throws()
    {
        await using LiteRecord record = Open();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(
            () => record.SamplesAsync("house", 0, 1, 0, new CancellationToken(canceled: true)));
    }

    private LiteRecord Open() => LiteRecord.Open(new RecordOptions { DataDirectory = _folder.Path });
}
