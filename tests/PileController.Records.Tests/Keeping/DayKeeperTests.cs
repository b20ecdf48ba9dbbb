using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;
using PileController.Records.Summaries;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Keeping;

public sealed class DayKeeperTests
{
    private const long Hour = 3_600_000;
    private static readonly List<TickEntry> History = TrialTicks.First(400, seed: 6);

    [Fact]
    public void Keep_DeletesOldTicksAndMinutesAndNothingElse()
    {
        SimulatedDisk disk = Written();

        Assert.Equal(
            [
                "lasting-000000000001.pile", "lasting-000000000081.pile", "lasting-000000000161.pile", "lasting-000000000241.pile",
                "lasting-000000000321.pile", "minutes-000000000241.pile", "minutes-000000000321.pile", "ticks-000000000265.pile",
                "ticks-000000000358.pile",
            ],
            disk.Names().Where(FileKind.IsAny));
        VerifyReport report = SmallRecord.Verify(disk);
        Assert.Empty(report.Problems);
        Assert.Equal((136, 265, 400, 10), (report.Ticks, report.FirstSequence, report.LastSequence, report.Days));
        using RecordReader reader = RecordReader.Open(disk);
        Assert.Equal(
            History.Select(t => t.Decision).Where(d => d.Kinds != DecisionKinds.Steady).Select(d => d.Sequence),
            SmallRecord.Lines(reader.Contents).Select(line => line.Sequence));
    }

    [Fact]
    public void Keep_TicksThatAreNotSummedUpYet_Stay()
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, History.Take(320), SmallRecord.Options with { DayTicks = 1000 });

        Assert.Equal(320, SmallRecord.Verify(disk).Ticks);
    }

    [Fact]
    public void Keep_AfterADay_LeavesNoFileOpen()
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, History.Take(60), SmallRecord.Options with { DayTicks = 1000 });
        using RecordStore store = RecordStore.Open(disk, 80, setAside: true);
        Assert.Contains(store.Files, file => file.IsOpen);

        new DayKeeper(store, SmallRecord.Options, new Faults()).Keep();

        Assert.Equal(40, store.Lasting.LastSequence);
        Assert.DoesNotContain(store.Files, file => file.IsOpen);
    }

    [Fact]
    public void Keep_EachDay_IsMarkedWithItsModesAndCurbs()
    {
        SimulatedDisk disk = Written();
        using RecordStore store = RecordStore.Open(disk, 80, setAside: true);

        foreach (StoredDay day in new RecordContents(store, []).Days(TimeRange.All, problem => Assert.Fail(problem)))
        {
            IReadOnlyList<DecisionLine> lines = day.Lines();
            Assert.NotEqual(LineMarks.Unknown, day.Marks);
            foreach (Mode mode in Enum.GetValues<Mode>())
            {
                foreach (Curb curb in Enum.GetValues<Curb>())
                {
                    DecisionAsk ask = new(0, long.MaxValue) { Mode = mode, Curb = curb };
                    bool both = lines.Any(line => line.Mode == mode) && lines.Any(line => line.Curb == curb);
                    Assert.Equal(both, day.Marks.MayHold(ask));
                    Assert.Equal(lines.Where(ask.Holds), day.PackedLines()?.Matching(ask) ?? []);
                }
            }
        }
    }

    [Fact]
    public void Verify_DayMarkedWithOtherModes_IsFound()
    {
        SimulatedDisk disk = Written();
        SimulatedDisk marked = new();
        using (RecordStore from = RecordStore.Open(disk, 80, setAside: true))
        using (RecordStore to = RecordStore.Open(marked, 80, setAside: true))
        {
            RecordFile file = from.Lasting.Files[0];
            foreach (BatchHead head in file.Heads)
            {
                byte[]?[] parts = [.. Enumerable.Range(0, FileKind.Lasting.Collections.Count).Select(part => file.Part(part, head.FirstSequence))];
                to.Lasting.Write([new FileEntry(head, parts) { Marks = new LineMarks(0, 0) }]);
            }
        }

        Assert.Contains(SmallRecord.Verify(marked).Problems, problem => problem.Contains("marked with", StringComparison.Ordinal));
    }

    [Fact]
    public void Keep_RecordThatWasNeverSummedUp_ComesAfterByAndBy()
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, History.Take(320), SmallRecord.Options with { DayTicks = 1000, KeepTicks = 1000 });
        foreach (string name in disk.Names().Where(name => name == Manifest.FileName || FileKind.Minutes.Holds(name) || FileKind.Lasting.Holds(name)))
        {
            disk.Delete(name);
        }

        Assert.Equal((320, 0), ((int)SmallRecord.Verify(disk).Ticks, SmallRecord.Verify(disk).Days));
        SmallRecord.Write(disk, History.Skip(320), SmallRecord.Options with { KeepTicks = 1000 });

        VerifyReport report = SmallRecord.Verify(disk);
        Assert.Empty(report.Problems);
        Assert.Equal((400, 10), ((int)report.Ticks, report.Days));
    }

    [Fact]
    public void Open_ClosedFiles_AreNotOpenedUntilAsked()
    {
        SimulatedDisk disk = Written();
        using RecordStore store = RecordStore.Open(disk, 80, setAside: true);

        Assert.Equal(4, store.Lasting.Files.Count(file => file.IsClosed));
        Assert.Equal((1, 80), (store.Lasting.Files[0].Span.FirstSequence, store.Lasting.Files[0].LastSequence));
        Assert.DoesNotContain(StoreEngine.LogNameOf(store.Lasting.Files[0].Name), disk.Names());
        Assert.Equal([1, 41], store.Lasting.Files[0].Heads.Select(head => head.FirstSequence));
        store.Lasting.Files[0].Rest();
        store.Lasting.Files[0].CheckSum();
    }

    [Fact]
    public void Open_ListOfClosedFilesDamaged_IsToldAndMadeAnew()
    {
        SimulatedDisk disk = Written();
        byte[] list = disk.BytesOf(Manifest.FileName);
        list[20] ^= 1;
        disk.Replace(Manifest.FileName, list);
        Assert.Contains(SmallRecord.Verify(disk).Problems, problem => problem.Contains(Manifest.FileName, StringComparison.Ordinal));
        Faults faults = new();
        using (RecordKeeper keeper = SmallRecord.Open(disk, faults: faults))
        {
            Assert.Contains(Manifest.FileName, faults.Text, StringComparison.Ordinal);
            Assert.Equal(400, keeper.LastSequence);
            Add(keeper, 100);
        }

        Assert.Empty(SmallRecord.Verify(disk).Problems);
        Assert.Contains(Manifest.Open(disk).Files, file => file.Name == "lasting-000000000001.pile");
    }

    [Theory]
    [InlineData("gone")]
    [InlineData("cut short")]
    public void Open_ClosedFileIsNotAsItWas_IsToldAndTheRestIsRead(string how)
    {
        const string name = "lasting-000000000161.pile";
        SimulatedDisk disk = Written();
        byte[] sound = disk.BytesOf(name);
        disk.Delete(name);
        if (how == "cut short")
        {
            disk.Replace(name, sound[..^8192]);
        }

        Assert.Contains(SmallRecord.Verify(disk).Problems, problem => problem.StartsWith(name, StringComparison.Ordinal));
        Faults faults = new();
        using RecordKeeper keeper = SmallRecord.Open(disk, faults: faults);

        Assert.Contains(name, faults.Text, StringComparison.Ordinal);
        Assert.Equal(how == "gone" ? [] : [name], disk.Quarantined);
        Assert.Equal(320, SmallRecord.Samples(keeper.Contents(), "mode", Hour).Sum(point => point.Count));
    }

    [Fact]
    public void Verify_ByteOfAClosedFileChanged_IsFoundByItsChecksum()
    {
        SimulatedDisk disk = Written();
        foreach (ClosedFile file in Manifest.Open(disk).Files)
        {
            byte[] sound = disk.BytesOf(file.Name);
            byte[] damaged = [.. sound];
            damaged[^1] ^= 1;
            disk.Replace(file.Name, damaged);

            Assert.Contains(SmallRecord.Verify(disk).Problems, problem => problem.Contains("checksum noted", StringComparison.Ordinal));
            disk.Replace(file.Name, sound);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Verify_SummaryThatIsNotThatOfItsTicks_IsFound(int tier)
    {
        Assert.Contains(Tampered(day => day with
        {
            Rows = [.. day.Rows.Select((rows, at) => at == tier ? Changed(rows) : rows)],
        }), problem => problem.Contains($"the rows of {Tiers.TicksOf((Tier)tier)} ticks", StringComparison.Ordinal));
    }

    [Fact]
    public void Verify_LineOrCommandOfADayMissing_IsFound()
    {
        Assert.NotEmpty(Tampered(day => day with { Lines = [.. day.Lines.Skip(1)] }));
        Assert.NotEmpty(Tampered(day => day with { Text = day.Text with { Commands = [] } }));
        Assert.Empty(Tampered(day => day));
    }

    [Fact]
    public void Open_NewestSummaryBroken_IsMadeAgainFromTheTicks()
    {
        SimulatedDisk disk = Written();
        byte[] damaged = disk.BytesOf("lasting-000000000321.pile");
        damaged.AsSpan(0, 8192).Fill(0xA5);
        disk.Replace("lasting-000000000321.pile", damaged);
        Faults faults = new();
        using (RecordKeeper keeper = SmallRecord.Open(disk, faults: faults))
        {
            Assert.Contains("lasting-000000000321", faults.Text, StringComparison.Ordinal);
            Add(keeper, 40);
        }

        VerifyReport report = SmallRecord.Verify(disk);
        Assert.Empty(report.Problems);
        Assert.Equal(11, report.Days);
    }

    [Fact]
    public void Open_TailAndTicksGone_ResumesFromTheLastDayAndNeverCountsANumberTwice()
    {
        SimulatedDisk disk = Written();
        foreach (string name in disk.Names().Where(name => name == TailFile.Name || FileKind.Ticks.Holds(name)))
        {
            disk.Delete(name);
        }

        using RecordKeeper keeper = SmallRecord.Open(disk);

        Assert.Equal(400, keeper.LastSequence);
        SameMemory.Assert(History[^1].MemoryAfter, keeper.LastMemory());
    }

    [Fact]
    public void Keep_DiskFullWhileSummingUp_IsToldAndDoneLater()
    {
        int fine = 0;
        for (int full = 60; full < 420; full += 9)
        {
            SimulatedDisk disk = new();
            Faults faults = new();
            using (RecordKeeper keeper = SmallRecord.Open(disk, faults: faults))
            {
                foreach (TickEntry tick in History.Take(160))
                {
                    disk.FullFrom = tick.Decision.Sequence < 120 ? full : int.MaxValue;
                    keeper.Keep(tick);
                    keeper.SyncIfDue();
                    fine += faults.Text?.Contains("summed up", StringComparison.Ordinal) == true ? 1 : 0;
                }

                disk.FullFrom = int.MaxValue;
                keeper.Flush();
            }

            VerifyReport report = SmallRecord.Verify(disk);
            Assert.Empty(report.Problems);
            Assert.Equal((160, 4), ((int)report.LastSequence, report.Days));
        }

        Assert.True(fine > 0, "The disk was never full while a day was summed up.");
    }

    private static SimulatedDisk Written()
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, History);
        return disk;
    }

    private static void Add(RecordKeeper keeper, int ticks)
    {
        foreach (TickEntry tick in TrialTicks.From(keeper.LastMemory()!, 2).Take(ticks))
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }
    }

    private static List<SummaryRow> Changed(IReadOnlyList<SummaryRow> rows)
    {
        SummaryCell[] cells = [.. rows[^1].Cells];
        cells[2] = cells[2] with { Sum = cells[2].Sum + 1 };
        return [.. rows.SkipLast(1), new SummaryRow(rows[^1].FirstSequence, rows[^1].FirstUtc)
        {
            Ticks = rows[^1].Ticks, LastUtc = rows[^1].LastUtc, Cells = cells,
        }];
    }

    // A record whose one summary was made wrongly and sealed soundly.
    private static IReadOnlyList<string> Tampered(Func<SummedDay, SummedDay> change)
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, History.Take(200), SmallRecord.Options with { DayTicks = 1000 });
        using (RecordStore store = RecordStore.Open(disk, 80, setAside: true))
        {
            SummedDay day = SummedDay.Of(
                [.. new RecordContents(store, []).StoredAfter(0, _ => { }).TakeWhile(batch => batch.Head.FirstSequence <= 200)], 1, 200, _ => { });
            DayKeeper.Write(store, change(day));
        }

        return SmallRecord.Verify(disk).Problems;
    }
}
