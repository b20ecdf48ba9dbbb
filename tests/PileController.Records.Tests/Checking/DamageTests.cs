using Microsoft.Extensions.Time.Testing;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Storage;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Checking;

public sealed class DamageTests
{
    private const int Ticks = 900;
    private static readonly RecordOptions Options = new() { DataDirectory = "simulated", BlockTicks = 100 };
    private static readonly SimulatedDisk Sound = Written();
    private static readonly string StoreName = Sound.Names().Single(FileKind.Ticks.Holds);

    [Fact]
    public void Verify_BytesOfAStoredBlockFlipped_AreFound()
    {
        byte[] sound = Sound.BytesOf(StoreName);
        int[] places = PlacesOfBlocks(sound);
        Random random = new(4);
        for (int trial = 0; trial < 150; trial++)
        {
            byte[] damaged = (byte[])sound.Clone();
            damaged[places[random.Next(places.Length)]] ^= (byte)(1 << random.Next(8));

            Assert.NotEmpty(Verify(StoreName, damaged).Problems);
        }
    }

    [Fact]
    public void Verify_BitFlippedAnywhere_IsFoundOrHarmless()
    {
        byte[] sound = Sound.BytesOf(StoreName);
        Random random = new(9);
        int found = 0;
        for (int trial = 0; trial < 300; trial++)
        {
            byte[] damaged = (byte[])sound.Clone();
            damaged[random.Next(sound.Length)] ^= (byte)(1 << random.Next(8));
            VerifyReport report = Verify(StoreName, damaged);
            found += report.IsClean ? 0 : 1;

            // A bit that LiteDB does not use may turn unseen; ticks and decisions may not be lost or changed unseen.
            Assert.True(!report.IsClean || report.Ticks == Ticks, $"Trial {trial}: {report.Ticks} ticks and no problem.");
        }

        Assert.True(found > 50, $"Only {found} bits mattered.");
    }

    [Fact]
    public void Verify_PageOfTheStoreZeroed_IsFoundOrHarmless()
    {
        byte[] sound = Sound.BytesOf(StoreName);
        int found = 0;
        for (int page = 0; page < sound.Length; page += 8192)
        {
            byte[] damaged = (byte[])sound.Clone();
            damaged.AsSpan(page, 8192).Clear();
            VerifyReport report = Verify(StoreName, damaged);
            found += report.IsClean ? 0 : 1;

            // A page that is not in use may be lost; ticks may not.
            Assert.True(!report.IsClean || report.Ticks == Ticks, $"Page {page / 8192}: {report.Ticks} ticks and no problem.");
        }

        Assert.True(found > 5, $"Only {found} pages mattered.");
    }

    [Fact]
    public void Verify_KeyOfATypeNobodyKnows_IsFound()
    {
        // Of a page of LiteDB: what it is stands in byte 4, 3 is an index; 3 before a key says that it is a long.
        const int pageBytes = 8192;
        const int indexPage = 3;
        const int longKey = 3;
        byte[] sound = Sound.BytesOf(StoreName);
        int found = 0;
        for (int at = 0; at < sound.Length; at++)
        {
            if (sound[at] == longKey && sound[(at / pageBytes * pageBytes) + 4] == indexPage && at % pageBytes > 32)
            {
                byte[] damaged = (byte[])sound.Clone();
                damaged[at] = 0xEE;
                found += Verify(StoreName, damaged).IsClean ? 0 : 1;
            }
        }

        Assert.True(found > 5, $"Only {found} places mattered.");
    }

    [Fact]
    public void Verify_StoreGone_IsFound()
    {
        SimulatedDisk disk = Copy();
        disk.Delete(StoreName);
        using RecordReader reader = RecordReader.Open(disk);

        Assert.NotEmpty(RecordVerifier.Check(reader.Contents, reader.Problems).Problems);
    }

    [Fact]
    public void Keeper_StoreThatCannotBeOpened_SetsItAsideTellsAndGoesOn()
    {
        byte[] damaged = Sound.BytesOf(StoreName);
        damaged.AsSpan(0, 8192).Fill(0xA5);
        SimulatedDisk disk = Copy();
        disk.Replace(StoreName, damaged);
        Faults faults = new();
        List<TickEntry> history = TrialTicks.First(Ticks + 200);
        using (RecordKeeper keeper = new(disk, Options, new FakeTimeProvider(), faults))
        {
            Assert.Contains(StoreName, faults.Text, StringComparison.Ordinal);
            Assert.Contains(StoreName, disk.Quarantined);

            // The tail still knows where the store ended and what it handed on.
            Assert.Equal(Ticks, keeper.LastSequence);
            SameMemory.Assert(history[Ticks - 1].MemoryAfter, keeper.LastMemory());
            foreach (TickEntry tick in history.Skip(Ticks))
            {
                keeper.Keep(tick);
                keeper.SyncIfDue();
            }

            keeper.Flush();
        }

        using RecordReader reader = RecordReader.Open(disk);
        VerifyReport report = RecordVerifier.Check(reader.Contents, reader.Problems);
        Assert.Empty(report.Problems);
        Assert.Equal((200, Ticks + 1), (report.Ticks, report.FirstSequence));
    }

    [Fact]
    public void Keeper_OneBlockDamaged_AnswersFromTheOthersAndTells()
    {
        byte[] damaged = Sound.BytesOf(StoreName);
        damaged[PlacesOfBlocks(damaged)[40]] ^= 1;
        SimulatedDisk disk = Copy();
        disk.Replace(StoreName, damaged);
        List<string> told = [];
        using RecordReader reader = RecordReader.Open(Copy());
        using RecordKeeper keeper = new(disk, Options, new FakeTimeProvider(), new Faults());

        IReadOnlyList<SeriesPoint> points = Queries.RecordQueriesProbe.Samples(keeper, "want", told.Add);

        int lost = reader.Batches[1].Head.Count;
        Assert.Equal(Ticks - lost, points.Sum(point => point.Count));
        Assert.Single(told);
    }

    private static SimulatedDisk Written()
    {
        SimulatedDisk disk = new();
        using RecordKeeper keeper = new(disk, Options, new FakeTimeProvider(), new Faults());
        foreach (TickEntry tick in TrialTicks.First(Ticks))
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }

        return disk;
    }

    private static SimulatedDisk Copy() => Sound.AfterCut(new Random(1));

    private static VerifyReport Verify(string name, byte[] bytes)
    {
        SimulatedDisk disk = Copy();
        disk.Replace(name, bytes);
        using RecordReader reader = RecordReader.Open(disk);
        return RecordVerifier.Check(reader.Contents, reader.Problems);
    }

    // Where the bytes of packed blocks lie: at least 24 in a row of a block as it was written.
    private static int[] PlacesOfBlocks(byte[] file)
    {
        using RecordReader reader = RecordReader.Open(Copy());
        List<int> places = [];
        foreach (StoredBatch stored in reader.Batches)
        {
            byte[] block = stored.Batch().Bytes;
            int at = file.AsSpan().IndexOf(block.AsSpan(0, 24));
            places.AddRange(Enumerable.Range(at, 24));
        }

        return [.. places];
    }
}
