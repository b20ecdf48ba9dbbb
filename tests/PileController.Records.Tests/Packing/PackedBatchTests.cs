using System.Text.Json;
using CsCheck;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Crash;
using PileController.Records.Packing;

namespace PileController.Records.Tests.Packing;

public sealed class PackedBatchTests
{
    private const int Later = ChannelTable.Count - ChannelTable.FirstCount;
    private static readonly RecordOrigin Origin = new("hash", "build", "platform");

    private static readonly Gen<Reading> AnyReading = Gen.Select(
        Gen.OneOf(Gen.Int[-2000, 2000], Gen.OneOf(int.MinValue, int.MaxValue)),
        Gen.OneOf(Enum.GetValues<ReadingQuality>()),
        Gen.OneOf(0, 1, int.MaxValue, -1),
        (quanta, quality, age) => new Reading(quanta, quality, age));

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Pack_AnyReadings_ComeBackToTheQuantum(bool squeeze) =>
        AnyReading.Array[ChannelTable.Count].Array[1, 40].Sample(rows =>
        {
            List<TickEntry> ticks = Ticks(rows.Select(row => new RigReadings(row)));

            PackedBatch batch = PackedBatch.Parse(PackOf(ticks, squeeze).Batch.Bytes);

            Assert.Equal(
                ticks.SelectMany(t => t.Raw.AsSpan().ToArray()), batch.RawReadings().SelectMany(r => r.AsSpan().ToArray()));
            Assert.Equal(ticks.Select(t => t.Decision.At), batch.Instants());
        }, iter: 200);

    [Fact]
    public void Pack_CommandsMemoryLinesAndOrigin_ComeBack()
    {
        List<TickEntry> ticks = TrialTicks.First(300);

        PackedTicks pack = PackOf(ticks, squeeze: true);

        BatchText text = PackedBatch.Parse(pack.Batch.Bytes).Text();
        Assert.Equal(Origin, text.Origin);
        SameMemory.Assert(ticks[0].MemoryBefore, RecordJson.ToMemory(text.MemoryBefore));
        SameMemory.Assert(ticks[^1].MemoryAfter, RecordJson.ToMemory(text.MemoryAfter));
        Assert.Equal(
            ticks.SelectMany((tick, row) => tick.Commands.Select(command => new CommandAt(row, command))), text.Commands);
        Assert.NotEmpty(text.Commands);
        Assert.Equal(
            ticks.Where(t => t.Decision.Kinds != DecisionKinds.Steady).Select(t => t.Decision.Sequence),
            new PackedLines(pack.Lines!.Bytes).All().Select(line => line.Sequence));
    }

    [Fact]
    public void Memory_DoublesOfEveryKind_ComeBackToTheBit()
    {
        double[] doubles = [0, -0.0, 0.1, double.Epsilon, double.MaxValue, double.NaN, double.PositiveInfinity, double.NegativeInfinity, 1 / 3.0];
        foreach (double value in doubles)
        {
            Memory memory = new() { Totals = new Totals(value, 0, 0, 0, 0, -value) };

            Memory back = RecordJson.ToMemory(RecordJson.Of(memory));

            Assert.Equal(BitConverter.DoubleToInt64Bits(value), BitConverter.DoubleToInt64Bits(back.Totals.WaterJoules));
        }
    }

    [Fact]
    public void Json_ReadingsInAMemory_ComeBack() => AnyReading.Array[ChannelTable.Count].Sample(readings =>
    {
        string json = JsonSerializer.Serialize(new RigReadings([.. readings]), RecordJson.Options);

        Assert.Equal(readings, JsonSerializer.Deserialize<RigReadings>(json, RecordJson.Options)!.AsSpan().ToArray());
    });

    [Theory]
    [InlineData("[]")]
    [InlineData("[1,2]")]
    [InlineData("[0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0]")]
    [InlineData("{}")]
    public void Json_ReadingsOfAnotherCount_AreRefused(string json) =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<RigReadings>(json, RecordJson.Options));

    [Fact]
    public void Parse_AnyFlippedBit_IsRefused()
    {
        byte[] bytes = PackOf(TrialTicks.First(20), squeeze: true).Batch.Bytes;
        for (int bit = 0; bit < bytes.Length * 8; bit += 3)
        {
            byte[] damaged = (byte[])bytes.Clone();
            damaged[bit / 8] ^= (byte)(1 << (bit % 8));

            Assert.Throws<InvalidDataException>(() => PackedBatch.Parse(damaged));
        }
    }

    [Fact]
    public void Pack_LaterChannelsThatNobodyHas_AreNotWritten()
    {
        RigReadings[] all = [.. TrialTicks.First(60).Select(tick => tick.Raw)];
        RigReadings[] first = [.. all.Select(raw => new RigReadings([.. raw.AsSpan()[..ChannelTable.FirstCount], .. new Reading[Later]]))];
        RigReadings[] last = [.. first.Zip(all, (few, raw) => few.With(Channel.SpareFour, raw[Channel.SpareFour]))];

        PackedBatch without = PackOf(Ticks(first), squeeze: false).Batch;

        Assert.Equal(first.SelectMany(r => r.AsSpan().ToArray()), without.RawReadings().SelectMany(r => r.AsSpan().ToArray()));
        Assert.All(without.Column(TickColumns.Of(Channel.SpareFour, TickColumns.Quality)), cell => Assert.Equal(0, cell));
        Assert.True(without.Bytes.Length + (Later * TickColumns.PerChannel) < PackOf(Ticks(last), squeeze: false).Batch.Bytes.Length);
    }

    // As if a later build knew one channel more.
    [Fact]
    public void Parse_MoreColumnsThanAreKnown_IsRefusedWithTheirNumber()
    {
        byte[] bytes = PackOf(TrialTicks.First(5), squeeze: false).Batch.Bytes;
        int at = 1;
        BatchHead.Read(bytes, ref at);
        int rest = at;
        Assert.InRange((int)Varint.Read(bytes, ref rest), TickColumns.FirstChannel, TickColumns.Count);
        ByteSink sink = new();
        sink.Bytes(bytes.AsSpan(0, at));
        sink.Number(TickColumns.Count + 1);
        sink.Bytes(bytes.AsSpan(rest..^4));

        InvalidDataException refused = Assert.Throws<InvalidDataException>(() => PackedBatch.Parse(sink.Seal()));

        Assert.Contains($"has {TickColumns.Count + 1} columns", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pack_FiguresThatAreNoNumbers_AreKeptAsNone()
    {
        TickEntry tick = TrialTicks.First(1)[0];
        TickEntry odd = tick with { Decision = tick.Decision with { WantWatts = double.NaN, MeansWatts = double.PositiveInfinity } };

        PackedBatch batch = PackOf([odd], squeeze: false).Batch;

        Assert.Equal(TickColumns.NoFigure, batch.Column(TickColumns.FirstFigure)[0]);
        Assert.Equal(TickColumns.NoFigure, batch.Column(TickColumns.FirstFigure + 1)[0]);
    }

    internal static PackedTicks PackOf(IReadOnlyList<TickEntry> ticks, bool squeeze)
    {
        BatchBuilder builder = new(Origin, ticks.Count + 3);
        foreach (TickEntry tick in ticks)
        {
            builder.Add(tick);
        }

        return builder.Pack(squeeze);
    }

    private static List<TickEntry> Ticks(IEnumerable<RigReadings> readings)
    {
        List<TickEntry> ticks = [];
        Memory memory = Memory.Fresh;
        foreach (RigReadings raw in readings)
        {
            (Decision decision, Memory after) = TrialTicks.Step(memory, raw, [], TrialTicks.At(memory.Sequence + 1));
            ticks.Add(new TickEntry(raw, [], memory, decision, after));
            memory = after;
        }

        return ticks;
    }
}
