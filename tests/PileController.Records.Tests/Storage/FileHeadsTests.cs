using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Tests.Keeping;

namespace PileController.Records.Tests.Storage;

/// <summary>A start goes on from what the tail says of the files that are still written.</summary>
public sealed class FileHeadsTests
{
    // Head of the file, collection, index, the newest entry.
    private const int BytesToGoOn = 5 * 8192;
    private static readonly RecordOptions OneFile = SmallRecord.Options with { FileTicks = 100_000, DayTicks = 8640 };
    private static readonly List<TickEntry> History = TrialTicks.First(600, seed: 4);

    [Fact]
    public void Start_NewestFileIsLarge_ReadsLittleOfIt()
    {
        SimulatedDisk disk = new();
        WriteAtOnce(disk, History);
        string name = Assert.Single(disk.Names(), FileKind.Ticks.Holds);
        Assert.True(disk.BytesOf(name).Length > 3 * BytesToGoOn);
        long before = disk.ReadBytesOf(name);

        using RecordKeeper keeper = SmallRecord.Open(disk, OneFile);

        Assert.Equal(History.Count, keeper.LastSequence);
        SameMemory.Assert(History[^1].MemoryAfter, keeper.LastMemory());
        Assert.InRange(disk.ReadBytesOf(name) - before, 1, BytesToGoOn);
        Assert.Equal(History.Count, keeper.Batches().Sum(batch => batch.Head.Count));
    }

    [Fact]
    public void Start_AtAnyMoment_FindsWhatAFileReadWholeHolds()
    {
        for (int ticks = 1; ticks < 200; ticks += 29)
        {
            // Left as a process leaves it that is killed: now and then between the store and the tail.
            SimulatedDisk disk = new();
            RecordKeeper killed = SmallRecord.Open(disk);
            Keep(killed, History.Take(ticks));
            AssertSame(disk);
        }
    }

    [Fact]
    public void Start_StoreIsAheadOfTheTail_FindsWhatCameAfter()
    {
        SimulatedDisk disk = new();
        RecordKeeper keeper = SmallRecord.Open(disk, OneFile);
        Keep(keeper, History.Take(100));
        keeper.Flush();
        byte[] tail = disk.BytesOf(TailFile.Name);
        Keep(keeper, History.Skip(100).Take(100));
        keeper.Dispose();
        disk.Replace(TailFile.Name, tail);

        using RecordKeeper again = SmallRecord.Open(disk, OneFile);

        Assert.Equal(200, again.LastSequence);
        SameMemory.Assert(History[199].MemoryAfter, again.LastMemory());
        Assert.Equal(200, again.Batches().Sum(batch => batch.Head.Count));
    }

    [Fact]
    public void Start_AnOlderCopyOfAFileWasPutBack_BelievesTheFile()
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, History.Take(100), OneFile);
        string name = Assert.Single(disk.Names(), FileKind.Ticks.Holds);
        byte[] older = disk.BytesOf(name);
        SmallRecord.Write(disk, History.Skip(100).Take(100), OneFile);
        disk.Replace(name, older);
        Faults faults = new();

        using RecordKeeper keeper = SmallRecord.Open(disk, OneFile, faults);

        Assert.Contains("The store ends at tick 100; it has held tick 200.", faults.Text, StringComparison.Ordinal);
        Assert.Equal(100, keeper.Batches().Sum(batch => batch.Head.Count));
        Assert.Equal(200, keeper.LastSequence);
    }

    [Fact]
    public void HeadsAfter_SomeNumber_AreThoseOfTheWholeFileAndReadNoMore()
    {
        SimulatedDisk disk = new();
        WriteAtOnce(disk, History);
        string name = Assert.Single(disk.Names(), FileKind.Ticks.Holds);
        FileSpan span;
        IReadOnlyList<BatchHead> all;
        using (RecordFile whole = RecordFile.Open(disk, FileKind.Ticks, name))
        {
            span = whole.Span;
            all = [.. whole.Heads];
        }

        using RecordFile file = RecordFile.Open(disk, FileKind.Ticks, name, span);
        long before = disk.ReadBytesOf(name);
        Assert.Equal(all.TakeLast(2), file.HeadsAfter(all[^2].FirstSequence));
        Assert.InRange(disk.ReadBytesOf(name) - before, 1, BytesToGoOn);
        foreach (long sequence in new[] { 600, 580, 579, 300, 20, 19, 0, 350 })
        {
            Assert.Equal(all.Where(head => head.LastSequence > sequence), file.HeadsAfter(sequence));
            Assert.Equal(span, file.Span);
        }
    }

    [Fact]
    public void Commit_NewestFileWasDamagedAtRest_SetsItAsideBeforeAnythingIsAdded()
    {
        SimulatedDisk disk = new();
        WriteAtOnce(disk, History.Take(500));
        string name = Assert.Single(disk.Names(), FileKind.Ticks.Holds);
        ForgetCountOfABlock(disk, name);
        Faults faults = new();
        using (RecordKeeper keeper = SmallRecord.Open(disk, OneFile, faults))
        {
            Assert.Equal(500, keeper.LastSequence);
            Keep(keeper, History.Skip(500));
            keeper.Flush();
        }

        Assert.Equal([name, StoreEngine.LogNameOf(name)], disk.Quarantined);
        Assert.Contains(name, faults.Text, StringComparison.Ordinal);
        using RecordKeeper after = SmallRecord.Open(disk, OneFile);
        Assert.Equal(100, after.Batches().Sum(batch => batch.Head.Count));
    }

    // The head of an old entry says that it has no ticks: "n" of BSON, a 32-bit number.
    private static void ForgetCountOfABlock(SimulatedDisk disk, string name)
    {
        byte[] bytes = disk.BytesOf(name);
        int at = bytes.AsSpan().IndexOf((ReadOnlySpan<byte>)[0x10, (byte)'n', 0, 20, 0, 0, 0]);
        Assert.True(at > 0);
        bytes[at + 3] = 0;
        disk.Replace(name, bytes);
    }

    private static void AssertSame(SimulatedDisk disk)
    {
        Dictionary<string, byte[]> files = disk.Names().ToDictionary(name => name, disk.BytesOf);
        using RecordKeeper keeper = SmallRecord.Open(CopyOf(files));
        RecordContents contents = keeper.Contents();
        using RecordStore whole = RecordStore.Open(CopyOf(files), 80, setAside: false);

        Assert.Equal(whole.Files.Select(file => (file.Name, file.Span)), contents.Store.Files.Select(file => (file.Name, file.Span)));
        Assert.Equal(whole.Files.SelectMany(file => file.Heads), contents.Store.Files.SelectMany(file => file.Heads));
    }

    private static SimulatedDisk CopyOf(Dictionary<string, byte[]> files)
    {
        SimulatedDisk disk = new();
        foreach ((string name, byte[] bytes) in files)
        {
            disk.Replace(name, (byte[])bytes.Clone());
        }

        return disk;
    }

    private static void WriteAtOnce(SimulatedDisk disk, IEnumerable<TickEntry> ticks)
    {
        using RecordKeeper keeper = SmallRecord.Open(disk, OneFile);
        keeper.BeginBulk();
        foreach (TickEntry tick in ticks)
        {
            keeper.Keep(tick);
        }

        keeper.EndBulk();
    }

    private static void Keep(RecordKeeper keeper, IEnumerable<TickEntry> ticks)
    {
        foreach (TickEntry tick in ticks)
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }
    }
}
