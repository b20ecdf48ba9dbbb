using PileController.Records.Crash;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Tests.Packing;

namespace PileController.Records.Tests.Storage;

public sealed class TailFileTests
{
    private static readonly List<PackedTicks> Packs =
        [.. TrialTicks.FirstLearned(24).Chunk(6).Select(ticks => PackedBatchTests.PackOf(ticks, squeeze: false))];

    [Fact]
    public void Open_LastFrameTornAtAnyByte_KeepsAllBeforeIt()
    {
        SimulatedDisk whole = Written(3);
        byte[] bytes = whole.BytesOf(TailFile.Name);
        int lastFrame = Written(2).BytesOf(TailFile.Name).Length;
        for (int length = lastFrame; length < bytes.Length; length++)
        {
            SimulatedDisk disk = new();
            disk.Replace(TailFile.Name, bytes[..length]);

            TailContents found = TailFile.Open(disk).Found;

            Assert.Equal(2, found.Packs.Count);
            Assert.Equal(length - lastFrame, found.TornBytes);
            Assert.Equal(0, found.DamagedPlaces);
        }
    }

    [Fact]
    public void Append_AfterATornFrame_TakesItsPlace()
    {
        SimulatedDisk disk = Written(3);
        byte[] bytes = disk.BytesOf(TailFile.Name);
        disk.Replace(TailFile.Name, bytes[..^7]);
        using (TailFile tail = TailFile.Open(disk))
        {
            tail.Append([Packs[3]]);
        }

        TailContents found = TailFile.Peek(disk);

        Assert.Equal([1L, 7, 19], found.Packs.Select(p => p.Batch.FirstSequence));
        Assert.Equal(0, found.TornBytes);
    }

    [Fact]
    public void Append_ThatFailed_LeavesNothingBehind()
    {
        SimulatedDisk disk = Written(1);
        using TailFile tail = TailFile.Open(disk);
        tail.Append([Packs[1]]);
        disk.FullFrom = disk.Steps + 2;
        Assert.Throws<IOException>(() => tail.Append([Packs[2]]));
        disk.FullFrom = int.MaxValue;

        tail.Append([Packs[3]]);

        TailContents found = TailFile.Peek(disk);
        Assert.Equal([1L, 7, 19], found.Packs.Select(p => p.Batch.FirstSequence));
        Assert.Equal(0, found.DamagedPlaces);
    }

    [Fact]
    public void Open_EarlierFrameDamagedAnywhere_IsToldAndTheOthersAreKept()
    {
        byte[] bytes = Written(3).BytesOf(TailFile.Name);
        int second = Written(1).BytesOf(TailFile.Name).Length;
        int third = Written(2).BytesOf(TailFile.Name).Length;
        for (int at = second; at < third; at += 5)
        {
            byte[] damaged = (byte[])bytes.Clone();
            damaged[at] ^= 0x10;
            SimulatedDisk disk = new();
            disk.Replace(TailFile.Name, damaged);

            TailContents found = TailFile.Open(disk).Found;

            Assert.Equal(1, found.DamagedPlaces);
            Assert.Equal([1L, 13], found.Packs.Select(p => p.Batch.FirstSequence));
            Assert.Single(disk.Quarantined);
        }
    }

    [Fact]
    public void Restart_ForgetsFramesAndRemembersWhereTheStoreEnds()
    {
        SimulatedDisk disk = Written(2);
        using (TailFile tail = TailFile.Open(disk))
        {
            tail.Restart(new TailBase(12, Packs[1].Batch.Text().MemoryAfter));
            tail.Append([Packs[2]]);
        }

        TailContents found = TailFile.Peek(disk);

        Assert.Equal(12, found.Base!.LastSequence);
        Assert.Equal(13, Assert.Single(found.Packs).Batch.FirstSequence);
    }

    private static SimulatedDisk Written(int frames)
    {
        SimulatedDisk disk = new();
        using TailFile tail = TailFile.Open(disk);
        foreach (PackedTicks pack in Packs.Take(frames))
        {
            tail.Append([pack]);
        }

        return disk;
    }
}
