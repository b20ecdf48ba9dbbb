using System.Buffers.Binary;
using System.IO.Compression;
using PileController.Records.Crash;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Tests.Packing;

namespace PileController.Records.Tests.Storage;

/// <summary>A tail of frames of a minute each: every tenth is whole and takes two pages, those between build on it.</summary>
public sealed class LeanFrameTests
{
    private const int Frames = 25;
    private const int TicksAFrame = 6;
    private static readonly List<PackedTicks> Packs =
        [.. TrialTicks.FirstLearned(Frames * TicksAFrame).Chunk(TicksAFrame).Select(ticks => PackedBatchTests.PackOf(ticks, squeeze: false))];

    private static readonly byte[] Sound = Written(Frames);

    [Fact]
    public void Append_SteadyFrames_TakeOnePageAndEveryTenthTakesTwo()
    {
        int[] pages = [.. Enumerable.Range(0, Frames).Select(frame => LengthAt(frame) / TailFrame.PageBytes)];

        Assert.Equal(Enumerable.Range(0, Frames).Select(frame => frame % 10 == 0 ? 2 : 1), pages);
        Assert.Equal(pages.Sum() * TailFrame.PageBytes, Sound.Length);
    }

    [Fact]
    public void Peek_LeanFrames_GiveBatchesToTheBit()
    {
        TailContents found = TailContents.Of(Sound);

        Assert.Equal(Packs.Select(pack => pack.Batch.Bytes), found.Packs.Select(pack => pack.Batch.Bytes));
        Assert.Equal(Packs.Select(pack => pack.Lines?.Bytes), found.Packs.Select(pack => pack.Lines?.Bytes));
        Assert.Equal((0, 0, 0), (found.DamagedPlaces, found.TornBytes, found.TicksWithoutMemory));
    }

    [Fact]
    public void Peek_LeanFrameDamaged_LosesItAndOnlyWhatTheNextWasGiven()
    {
        TailContents found = Damaged(5);

        AssertAllBut(found, gone: [5], beforeLost: [6], afterLost: []);
    }

    [Fact]
    public void Peek_WholeFrameDamaged_KeepsTheTicksThatBuildOnItAndNoMemoryOfThem()
    {
        TailContents found = Damaged(10);

        AssertAllBut(found, gone: [10], beforeLost: [.. Enumerable.Range(11, 9)], afterLost: [.. Enumerable.Range(11, 9)]);
    }

    [Fact]
    public void Peek_OldPieceInThePlaceOfANewOne_IsNotBuiltOn()
    {
        byte[] bytes = (byte[])Sound.Clone();
        Sound.AsSpan(StartOf(0), LengthAt(0)).CopyTo(bytes.AsSpan(StartOf(12)));

        TailContents found = TailContents.Of(bytes);

        AssertAllBut(found, gone: [12, 13], beforeLost: [14], afterLost: []);
    }

    [Fact]
    public void Append_AfterAStart_BuildsOnNothingOfBefore()
    {
        SimulatedDisk disk = new();
        disk.Replace(TailFile.Name, Written(5));
        using (TailFile tail = TailFile.Open(disk))
        {
            tail.Append([Packs[5]]);
        }

        Assert.Equal(2, (disk.BytesOf(TailFile.Name).Length - StartOf(5)) / TailFrame.PageBytes);
    }

    [Fact]
    public void Append_TickThatWasNotGivenWhatWasHandedOn_IsWhole()
    {
        SimulatedDisk disk = new();
        using (TailFile tail = TailFile.Open(disk))
        {
            tail.Append([Packs[0]]);
            tail.Append([Packs[2]]);
        }

        TailContents found = TailFile.Peek(disk);

        Assert.Equal(2 * 2 * TailFrame.PageBytes, disk.BytesOf(TailFile.Name).Length);
        Assert.Equal(Packs[2].Batch.Bytes, found.Packs[1].Batch.Bytes);
    }

    [Fact]
    public void Append_SomeBatchesAtOnce_AreOneLeanFrame()
    {
        SimulatedDisk disk = new();
        using (TailFile tail = TailFile.Open(disk))
        {
            tail.Append([Packs[0]]);
            tail.Append([.. Packs.Take(4).Skip(1)]);
        }

        Assert.Equal(Packs.Take(4).Select(pack => pack.Batch.Bytes), TailFile.Peek(disk).Packs.Select(pack => pack.Batch.Bytes));
        Assert.Equal(3 * TailFrame.PageBytes, disk.BytesOf(TailFile.Name).Length);
    }

    [Fact]
    public void Append_ToATailOfAnEarlierBuild_GoesOnAtItsEndAndEndsWithAPage()
    {
        SimulatedDisk disk = new();
        disk.Replace(TailFile.Name, TailOfAnEarlierBuild());
        int before;
        using (TailFile tail = TailFile.Open(disk))
        {
            before = tail.Found.Packs.Count;
            foreach (TickEntry[] ticks in TrialTicks.From(TrialTicks.Learned with { Sequence = 550 }, 2).Take(12).Chunk(6))
            {
                tail.Append([PackedBatchTests.PackOf(ticks, squeeze: false)]);
            }
        }

        TailContents found = TailFile.Peek(disk);

        Assert.NotEqual(0, before);
        Assert.Equal((before + 2, 0, 0, 0), (found.Packs.Count, found.DamagedPlaces, found.TornBytes, found.TicksWithoutMemory));
        Assert.Equal([551L, 557], found.Packs.Skip(before).Select(pack => pack.Batch.FirstSequence));
        Assert.Equal(0, disk.BytesOf(TailFile.Name).Length % TailFrame.PageBytes);
    }

    [Fact]
    public void Peek_FrameOfALaterBuild_IsRefusedByItsKind()
    {
        byte[] frame = Sound[..LengthAt(0)];
        frame[8] = 9;
        ByteSink sealing = new();
        sealing.Bytes(frame.AsSpan(0, frame.Length - 4));

        Assert.Contains("kind 9", Assert.Throws<InvalidDataException>(() => TailContents.Of(sealing.Seal())).Message, StringComparison.Ordinal);
    }

    private static byte[] TailOfAnEarlierBuild()
    {
        using ZipArchive zip = ZipFile.OpenRead(Path.Combine(AppContext.BaseDirectory, "Packing", "eighteen-channels.zip"));
        using MemoryStream bytes = new();
        using Stream tail = zip.GetEntry(TailFile.Name)!.Open();
        tail.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static void AssertAllBut(TailContents found, int[] gone, int[] beforeLost, int[] afterLost)
    {
        int[] kept = [.. Enumerable.Range(0, Frames).Except(gone)];
        Assert.Equal(1, found.DamagedPlaces);
        Assert.Equal(kept.Select(frame => Packs[frame].Batch.FirstSequence), found.Packs.Select(pack => pack.Batch.FirstSequence));
        Assert.Equal(beforeLost.Union(afterLost).Count() * TicksAFrame, found.TicksWithoutMemory);
        foreach ((int frame, PackedTicks pack) in kept.Zip(found.Packs))
        {
            BatchText text = pack.Batch.Text();
            BatchText sound = Packs[frame].Batch.Text();
            Assert.Equal(Packs[frame].Batch.WithoutText, pack.Batch.WithoutText);
            Assert.Equal(beforeLost.Contains(frame) ? "null" : sound.MemoryBefore.GetRawText(), text.MemoryBefore.GetRawText());
            Assert.Equal(afterLost.Contains(frame) ? "null" : sound.MemoryAfter.GetRawText(), text.MemoryAfter.GetRawText());
        }
    }

    private static TailContents Damaged(int frame)
    {
        byte[] bytes = (byte[])Sound.Clone();
        bytes[StartOf(frame) + 100] ^= 4;
        return TailContents.Of(bytes);
    }

    private static int StartOf(int frame) => Enumerable.Range(0, frame).Sum(LengthAt);

    private static int LengthAt(int frame)
    {
        int at = 0;
        for (int before = 0; before < frame; before++)
        {
            at += Length(at);
        }

        return Length(at);
    }

    private static int Length(int at) => TailFrame.LeastBytes + BinaryPrimitives.ReadInt32LittleEndian(Sound.AsSpan(at + 4));

    private static byte[] Written(int frames)
    {
        SimulatedDisk disk = new();
        using TailFile tail = TailFile.Open(disk);
        foreach (PackedTicks pack in Packs.Take(frames))
        {
            tail.Append([pack]);
        }

        return disk.BytesOf(TailFile.Name);
    }
}
