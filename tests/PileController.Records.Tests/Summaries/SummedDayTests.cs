using CsCheck;
using PileController.Control.Decisions;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Summaries;

namespace PileController.Records.Tests.Summaries;

public sealed class SummedDayTests
{
    [Fact]
    public void Rows_OfRandomTicks_AreThePlainSumsInEveryTier() =>
        Gen.Select(Gen.Int[1, 1_000_000], Gen.Int[1, 480], Gen.Int[1, 100], Gen.Int[0, 3]).Sample(
            (seed, count, first, missing) =>
            {
                Random random = new(seed);
                List<TickEntry> ticks = [.. ClockHistory.Of(random, count).SelectMany(session => session)];
                ticks.RemoveAll(tick => tick.Decision.Sequence % 50 < missing);
                long last = first + random.Next(1, 480);
                List<StoredBatch> batches = Batches(ticks, random);
                List<TickEntry> inside = [.. ticks.Where(tick => tick.Decision.Sequence >= first && tick.Decision.Sequence <= last)];
                batches.RemoveAll(batch => batch.Head.LastSequence < first || batch.Head.FirstSequence > last);
                if (batches.Count == 0)
                {
                    return;
                }

                SummedDay day = SummedDay.Of(batches, first, last, problem => Assert.Fail(problem));

                foreach (Tier tier in Tiers.All)
                {
                    List<SummaryRow> expected = PlainSums.Rows(inside, Tiers.TicksOf(tier));
                    List<SummaryRow> actual = PackedRows.Parse(PackedRows.Of(day.Rows[(int)tier]).Bytes).Rows();
                    Assert.Equal(
                        expected.Select(row => (row.FirstSequence, row.Ticks, row.FirstUtc, row.LastUtc)),
                        actual.Select(row => (row.FirstSequence, row.Ticks, row.FirstUtc, row.LastUtc)));
                    Assert.All(expected.Zip(actual), pair => Assert.True(pair.First.IsSameAs(pair.Second)));
                }

                Assert.Equal(
                    inside.Where(tick => tick.Decision.Kinds != DecisionKinds.Steady).Select(tick => tick.Decision.Sequence),
                    day.Lines.Select(line => line.Sequence));
                Assert.Equal(
                    inside.SelectMany(tick => tick.Commands.Select(command => (tick.Decision.Sequence, command.ToString()))),
                    day.Text.Commands.Select(command => (command.Sequence, command.Command.ToString())));
            },
            iter: 150);

    [Fact]
    public void Sum_OfADayOfTheLargestFigures_IsExact()
    {
        SummaryCell sum = default;
        for (int tick = 0; tick < 8640; tick++)
        {
            sum = sum.With(tick % 2 == 0 ? TickColumns.MostFigure : TickColumns.MostFigure - 1);
        }

        SummaryRow row = new(1, 0) { Ticks = 8640, Cells = [.. Enumerable.Repeat(sum, SummarySeries.Count)] };
        SummaryRow low = new(8641, 0) { Ticks = 1, Cells = [.. Enumerable.Repeat(default(SummaryCell).With(-TickColumns.MostFigure), SummarySeries.Count)] };

        Assert.Equal((8640 * (Int128)TickColumns.MostFigure) - 4320, sum.Sum);
        List<SummaryRow> back = PackedRows.Of([row, low]).Rows();
        Assert.True(back[0].IsSameAs(row));
        Assert.True(back[1].IsSameAs(low));
    }

    [Fact]
    public void Text_GoesToBytesAndBack_WithMemoryToResumeFrom()
    {
        List<TickEntry> ticks = TrialTicks.First(100);
        SummedDay day = SummedDay.Of(Batches(ticks, new Random(3)), 1, 100, problem => Assert.Fail(problem));

        DayText back = DayText.Parse(day.Text.Pack());

        SameMemory.Assert(ticks[^1].MemoryAfter, RecordJson.ToMemory(back.Memory!.Value));
        Assert.Equal(day.Text.Commands.Select(c => c.ToString()), back.Commands.Select(c => c.ToString()));
    }

    [Fact]
    public void Sum_OfADamagedBatch_IsToldAndLeftOut()
    {
        List<StoredBatch> batches = [.. Batches(TrialTicks.First(100), new Random(3))];
        StoredBatch hurt = batches[1];
        batches[1] = hurt with { Batch = () => throw new InvalidDataException("hurt") };
        List<string> told = [];

        SummedDay day = SummedDay.Of(batches, 1, 100, told.Add);

        Assert.Contains("hurt", Assert.Single(told), StringComparison.Ordinal);
        Assert.Equal(100 - hurt.Head.Count, day.Rows[0].Sum(row => row.Ticks));
        Assert.Equal((1, 100), (day.Head.FirstSequence, day.Head.LastSequence));
    }

    private static List<StoredBatch> Batches(List<TickEntry> ticks, Random random)
    {
        List<StoredBatch> batches = [];
        BatchBuilder builder = new(new RecordOrigin("", "", ""), 500);
        int room = 0;
        foreach (TickEntry tick in ticks)
        {
            if (builder.Count > 0 && (builder.Count >= room || !builder.IsContinuedBy(tick)))
            {
                batches.Add(StoredBatch.Of(builder.Pack(squeeze: true)));
                builder.Clear();
            }

            room = builder.Count == 0 ? random.Next(1, 60) : room;
            builder.Add(tick);
        }

        if (builder.Count > 0)
        {
            batches.Add(StoredBatch.Of(builder.Pack(squeeze: true)));
        }

        return batches;
    }
}
