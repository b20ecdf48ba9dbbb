using Microsoft.Extensions.Time.Testing;
using PileController.Control;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Summaries;
using PileController.Records.Tests.Packing;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

/// <summary>A record whose tail was damaged where a memory is built on another.</summary>
public sealed class LostMemoryTests
{
    // A block of 120 ticks is committed after tick 120 at the latest; the tail then holds the other 90.
    private const int Ticks = 210;
    private static readonly List<TickEntry> History = TrialTicks.FirstLearned(Ticks, seed: 6);
    private static readonly RecordOptions Options = new() { DataDirectory = "simulated", BlockTicks = 120 };

    [Fact]
    public void LastMemory_NewestThatIsWholeDamaged_IsTheNewestThatCanBeMadeAndIsTold()
    {
        SimulatedDisk disk = Killed();
        long lost = DamageTheNewestWholeFrame(disk);
        Faults faults = new();
        using RecordKeeper keeper = Open(disk, faults);

        Memory? memory = keeper.LastMemory();

        Assert.Equal(Ticks, keeper.LastSequence);
        SameMemory.Assert(History[(int)lost - 2].MemoryAfter with { Sequence = Ticks }, memory);
        Assert.Contains($"What tick {Ticks} handed on is lost: it goes on from what tick {lost - 1} handed on.", faults.Text, StringComparison.Ordinal);
        Assert.Contains("cannot be decided again", faults.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Keeper_WhoseTailLostMemories_GoesOnAndOnlyThoseTicksAreNotDecidedAgain()
    {
        SimulatedDisk disk = Killed();
        long lost = DamageTheNewestWholeFrame(disk);
        using (RecordKeeper keeper = Open(disk, new Faults()))
        {
            CutTrial.Write(keeper, TrialTicks.From(keeper.LastMemory()!, 7).Take(300));
        }

        using RecordReader reader = RecordReader.Open(disk);
        VerifyReport verified = RecordVerifier.Check(reader.Contents, reader.Problems);
        ReplayReport replayed = RecordReplayer.Run(reader.Batches, _ => TrialTicks.Step);

        Assert.Contains(verified.Problems, problem => problem.Contains("cannot be decided again", StringComparison.Ordinal));
        Assert.Single(replayed.Problems);
        Assert.Null(replayed.FirstDifference);
        Assert.InRange(verified.Ticks, Ticks + 300 - 12, Ticks + 300 - 1);
        Assert.Equal(replayed.Ticks, replayed.Identical);
        Assert.InRange(replayed.Ticks, lost - 1 + 300, Ticks + 300 - 1);
    }

    [Fact]
    public void Keeper_CutBetweenTheTailsBaseAndItsFirstFrame_GoesOnFromTheBase()
    {
        SimulatedDisk disk = Killed();
        byte[] tail = disk.BytesOf(TailFile.Name);
        Assert.True(TailFrame.TryRead(tail, 0, out byte kind, out _, out int first));
        Assert.Equal(TailFrame.BaseKind, kind);
        for (int torn = 0; torn < TailFrame.PageBytes; torn += 256)
        {
            SimulatedDisk cut = disk.AfterKill();
            cut.Replace(TailFile.Name, tail[..(first + torn)]);
            Faults faults = new();
            using RecordKeeper keeper = Open(cut, faults);

            Assert.InRange(keeper.LastSequence, 100, 140);
            SameMemory.Assert(History[(int)keeper.LastSequence - 1].MemoryAfter, keeper.LastMemory());
            Assert.Equal(CutTrial.SaidOfTorn(torn), faults.Text);
        }
    }

    [Fact]
    public void Join_BatchThatLostWhatItWasGiven_IsABlockOfItsOwn()
    {
        List<PackedTicks> packs = [.. TrialTicks.First(30).Chunk(5).Select(ticks => PackedBatchTests.PackOf(ticks, squeeze: false))];
        packs[2] = Without(packs[2], before: true, after: false);

        Assert.Equal([10, 5, 15], BlockJoiner.Join(packs, 60).Select(block => block.Batch.Count));
    }

    [Fact]
    public void SummedDay_LastMemoryLost_KeepsTheOneBefore()
    {
        List<PackedTicks> packs = [.. TrialTicks.First(30).Chunk(10).Select(ticks => PackedBatchTests.PackOf(ticks, squeeze: false))];
        packs[2] = Without(packs[2], before: true, after: true);

        SummedDay day = SummedDay.Of([.. packs.Select(StoredBatch.Of)], 1, 30, problem => Assert.Fail(problem));

        Assert.Equal(20, RecordJson.ToMemory(day.Text.Memory!.Value).Sequence);
    }

    private static PackedTicks Without(PackedTicks pack, bool before, bool after)
    {
        BatchText text = pack.Batch.Text();
        return pack with
        {
            Batch = PackedBatch.Of(pack.Batch.WithoutText, text with
            {
                MemoryBefore = before ? BatchText.Lost : text.MemoryBefore,
                MemoryAfter = after ? BatchText.Lost : text.MemoryAfter,
            }),
        };
    }

    // The first tick of the frame that is gone.
    private static long DamageTheNewestWholeFrame(SimulatedDisk disk)
    {
        byte[] bytes = disk.BytesOf(TailFile.Name);
        int newest = 0;
        long first = 0;
        for (int at = 0; TailFrame.TryRead(bytes, at, out byte kind, out byte[] body, out int next); at = next)
        {
            if (kind == TailFrame.TicksKind)
            {
                newest = at;
                first = TailFrame.Read(kind, body, TailMemories.None).Packs[0].Batch.FirstSequence;
            }
        }

        Assert.InRange(first, 150, Ticks - 10);
        bytes[newest + 50] ^= 1;
        disk.Replace(TailFile.Name, bytes);
        return first;
    }

    private static SimulatedDisk Killed()
    {
        SimulatedDisk disk = new();
        RecordKeeper keeper = Open(disk, new Faults());
        CutTrial.Write(keeper, History);
        keeper.Flush();
        return disk.AfterKill();
    }

    private static RecordKeeper Open(SimulatedDisk disk, Faults faults) => new(disk, Options, new FakeTimeProvider(), faults);
}
