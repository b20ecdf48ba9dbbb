using Microsoft.Extensions.Time.Testing;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Checking;

public sealed class RecordReaderTests : IDisposable
{
    private static readonly List<TickEntry> History = TrialTicks.First(900, seed: 12);
    private readonly TrialFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Read_WhileTicksAreKept_SeesWhatWasSafeAtItsBeginning()
    {
        SimulatedDisk disk = new();
        Faults faults = new();
        using RecordKeeper keeper = Keeper(disk, faults);
        Keep(keeper, 0, 430);
        long safe = keeper.SafeSequence;
        using (RecordReader reader = RecordReader.Open(disk))
        {
            // Blocks fill up and files are due meanwhile: all of it waits in the tail, and is safe there.
            Keep(keeper, 430, 470);
            Assert.True(keeper.SafeSequence > safe);
            VerifyReport report = RecordVerifier.Check(reader.Batches, reader.Problems);
            Assert.Empty(report.Problems);
            Assert.Equal((safe, safe), (report.LastSequence, report.Ticks));
            Assert.Null(faults.Text);

            Keep(keeper, 470, 700);
            Assert.Contains("reading the record", faults.Text, StringComparison.Ordinal);
            Assert.False(faults.IsFailing);
            Assert.Equal(safe, RecordVerifier.Check(reader.Batches, reader.Problems).LastSequence);
        }

        Keep(keeper, 700, 900);

        Assert.Null(faults.Text);
        Assert.Equal(0, keeper.Dropped);
        using RecordReader after = RecordReader.Open(disk);
        Assert.Equal(keeper.SafeSequence, RecordVerifier.Check(after.Batches, after.Problems).Ticks);
    }

    [Fact]
    public void Keeper_EndsWhileAReaderReads_LeavesTheRestInTheTail()
    {
        SimulatedDisk disk = new();
        RecordKeeper keeper = Keeper(disk, new Faults());
        using (RecordReader.Open(disk))
        {
            Keep(keeper, 0, 300);
            keeper.Dispose();
        }

        using RecordKeeper next = Keeper(disk, new Faults());
        Assert.Equal(300, next.SafeSequence);
        SameMemory.Assert(History[299].MemoryAfter, next.LastMemory());
    }

    [Fact]
    public async Task Read_OfADamagedRecord_LeavesNoMark()
    {
        await using (LiteRecord record = LiteRecord.Open(new RecordOptions { DataDirectory = _folder.Path, BlockTicks = 60 }))
        {
            History.ForEach(tick => record.TryAppend(tick));
        }

        string store = Directory.EnumerateFiles(_folder.Path, "*.pile").Single();
        byte[] sound = await File.ReadAllBytesAsync(store);
        for (int page = 0; page < sound.Length; page += 8192)
        {
            byte[] damaged = (byte[])sound.Clone();
            damaged.AsSpan(page + 4096, 4096).Clear();
            await File.WriteAllBytesAsync(store, damaged);
            string[] before = Names();

            RecordVerifier.Check(_folder.Path);

            byte[] after = await File.ReadAllBytesAsync(store);
            Assert.True(after.SequenceEqual(damaged), $"Page {page / 8192} was changed.");
            Assert.Equal(before, Names());
        }
    }

    private static RecordKeeper Keeper(SimulatedDisk disk, Faults faults) => new(
        disk, new RecordOptions { DataDirectory = "simulated", BlockTicks = 40, FileTicks = 360 }, new FakeTimeProvider(), faults);

    private static void Keep(RecordKeeper keeper, int from, int to)
    {
        foreach (TickEntry tick in History.Take(to).Skip(from))
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }
    }

    private string[] Names() => [.. Directory.EnumerateFiles(_folder.Path).Order()];
}
