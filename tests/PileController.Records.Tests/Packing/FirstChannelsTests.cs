using System.IO.Compression;
using System.Text.Json;
using PileController.Control;
using PileController.Control.Interlocks;
using PileController.Control.Readings;
using PileController.Records.Backups;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Packing;

namespace PileController.Records.Tests.Packing;

/// <summary>
/// A record of 550 ticks that a build of eighteen channels wrote and was cut off in: blocks, two summed-up days of 240
/// ticks, a tail, memories with eighteen probes and seventeen interlocks (<see cref="TrialTicks"/>, seed 18).
/// </summary>
public sealed class FirstChannelsTests : IDisposable
{
    private const long Ticks = 550;
    private static readonly Channel[] Later = [.. Enum.GetValues<Channel>().Where(c => (int)c >= ChannelTable.FirstCount)];
    private readonly TrialFolder _folder = new();

    public FirstChannelsTests() =>
        ZipFile.ExtractToDirectory(Path.Combine(AppContext.BaseDirectory, "Packing", "eighteen-channels.zip"), _folder.Path);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Verify_OfEighteenChannels_IsClean()
    {
        VerifyReport report = RecordVerifier.Check(_folder.Path);

        Assert.Empty(report.Problems);
        Assert.Equal((Ticks, 2), (report.Ticks, report.Days));
    }

    [Fact]
    public void Replay_OfEighteenChannels_IsTheSameToTheBit()
    {
        ReplayReport report = RecordReplayer.Run(_folder.Path, TrialTicks.Step);

        Assert.Empty(report.Problems);
        Assert.Null(report.FirstDifference);
        Assert.Equal((Ticks, Ticks), (report.Ticks, report.Identical));
    }

    [Fact]
    public async Task Open_OfEighteenChannels_GoesOnWithAllOfThem()
    {
        await using (LiteRecord record = LiteRecord.Open(Options))
        {
            Memory memory = (await record.LastMemoryAsync(default))!;
            Assert.Equal(Ticks, memory.Sequence);
            Assert.Equal(ChannelTable.FirstCount, memory.Probes.Length);
            Assert.Equal(InterlockTable.FirstCount, memory.Interlocks.Length);
            Assert.True(memory.Interlocks[3].Latched);
            foreach (TickEntry tick in TrialTicks.From(memory, 24).Take(240))
            {
                Assert.True(record.TryAppend(tick));
            }

            await record.FlushAsync(default);
            long end = TrialTicks.At(Ticks + 240).UtcMilliseconds + 1;
            IReadOnlyList<IReadOnlyList<SeriesPoint>> points = await record.SamplesAsync(
                ["heapCore", .. Later.Select(c => ChannelTable.Of(c).Name)], TrialTicks.At(1).UtcMilliseconds, end, 0, default);
            Assert.Equal(790, points[0].Count);
            Assert.All(points.Skip(1), series => Assert.All(series.Take((int)Ticks), point => Assert.Null(point.Mean)));
            Assert.All(points.Skip(1), series => Assert.True(series.Skip((int)Ticks).Count(point => point.Mean is not null) > 200));
            Assert.Null(record.Health.Fault);
            Assert.Null(record.Health.Damage);
        }

        VerifyReport verified = RecordVerifier.Check(_folder.Path);
        ReplayReport replayed = RecordReplayer.Run(_folder.Path, TrialTicks.Step);
        Assert.Empty(verified.Problems);
        Assert.Equal((790L, 3), (verified.Ticks, verified.Days));
        Assert.Null(replayed.FirstDifference);
        Assert.Equal(790, replayed.Identical);
    }

    [Fact]
    public async Task SamplesAsync_SummedUpBeforeAndAfter_TellsTheLaterChannelsOfTheLaterTicksOnly()
    {
        await using LiteRecord record = LiteRecord.Open(Options with { KeepTicks = 240, FileTicks = 240 });
        Memory memory = (await record.LastMemoryAsync(default))!;
        foreach (TickEntry tick in TrialTicks.From(memory, 24).Take(410))
        {
            Assert.True(record.TryAppend(tick));
        }

        await record.FlushAsync(default);
        IReadOnlyList<IReadOnlyList<SeriesPoint>> points = await record.SamplesAsync(
            ["heapCore", "spareFour"], TrialTicks.At(1).UtcMilliseconds, TrialTicks.At(960).UtcMilliseconds + 1, 3_600_000, default);

        Assert.True(points[0].Sum(point => point.Count) > 900);
        Assert.InRange(points[1].Sum(point => point.Count), 350, 410);
        Assert.Equal(20, points[1].Where(point => point.Mean is not null).Average(point => point.Mean)!.Value, 1.0);
    }

    [Fact]
    public void Backup_OfEighteenChannels_IsMadeAndVerified()
    {
        using TrialFolder to = new();
        string copy = Path.Combine(to.Path, "copy");

        BackupMaker.Make(_folder.Path, copy, DateTimeOffset.UnixEpoch);

        Assert.Empty(RecordVerifier.Check(copy).Problems);
    }

    [Fact]
    public void Json_OfEighteenChannels_IsReadAndWrittenAgainAsItWas()
    {
        string json = $"[{string.Join(',', Enumerable.Range(0, 3 * ChannelTable.FirstCount).Select(n => n % 3 == 1 ? 1 : n))}]";

        RigReadings readings = JsonSerializer.Deserialize<RigReadings>(json, RecordJson.Options)!;

        Assert.All(Later, channel => Assert.Equal(Reading.NotFitted, readings[channel]));
        Assert.Equal(json, JsonSerializer.Serialize(readings, RecordJson.Options));
    }

    private RecordOptions Options => new() { DataDirectory = _folder.Path, BlockTicks = 120, DayTicks = 240, Origin = new("later", "2", "test") };
}
