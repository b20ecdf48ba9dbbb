using PileController.Control.Decisions;
using PileController.Ledgers;
using PileController.Ledgers.Counting;
using PileController.Records.Accounts;

namespace PileController.Tests.Ledgers;

public class DayCountingTests
{
    private const string NewYork = "America/New_York";

    [Theory]
    [InlineData("2026-03-08", 4, 23)]
    [InlineData("2026-11-01", 4, 25)]
    [InlineData("2026-07-04", 4, 24)]
    [InlineData("2026-12-24", 5, 24)]
    public void Day_OverAChangeOfTheClocks_HasTheHoursOfThatDate(string date, int utcOfMidnight, int hours)
    {
        // Summer time begins and ends at 02:00 (15 U.S.C. 260a).
        DateOnly day = DateOnly.Parse(date, System.Globalization.CultureInfo.InvariantCulture);
        DateTimeOffset start = new(day.AddDays(-1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero);
        DayCounting counting = Counted(new Blocks().Hours(start, 72), NewYork);

        DayEntry entry = counting.Over.Single(d => d.Date == day);

        Assert.Equal(hours * Blocks.Ticks, entry.Figures.Ticks);
        int begins = hours == 23 ? utcOfMidnight + 1 : utcOfMidnight;
        Assert.Equal(new DateTimeOffset(day.ToDateTime(new TimeOnly(begins, 0)), TimeSpan.Zero).ToUnixTimeMilliseconds(), entry.FromUtcMilliseconds);
        Assert.Equal(Blocks.Of(entry.Figures.Ticks).WaterJoules, entry.Energy.WaterJoules, 1e-3);
    }

    [Theory]
    [InlineData(20, true)]
    [InlineData(40, false)]
    public void Block_OverMidnight_GoesToTheDateOfItsMiddle(int minutesBefore, bool toTheNext)
    {
        DateTimeOffset midnight = new(2026, 1, 11, 0, 0, 0, TimeSpan.Zero);
        DayCounting counting = Counted(new Blocks().Hours(midnight.AddMinutes(-minutesBefore).AddHours(-5), 12), "+00:00");

        DayEntry before = Assert.Single(counting.Over);

        Assert.Equal(toTheNext ? 5 * 60 : 6 * 60, before.Figures.Ticks);
        Assert.Equal(midnight.AddMinutes(-minutesBefore + (toTheNext ? 0 : 60) - 1).ToUnixTimeMilliseconds(), before.ToUtcMilliseconds);
        Assert.Equal(Blocks.Of(before.Figures.Ticks), before.Energy);
    }

    [Theory]
    [InlineData(-5)]
    [InlineData(-30)]
    [InlineData(-24 * 400)]
    [InlineData(24 * 365 * 70)]
    public void Clock_ThatJumps_MakesNoTickCountTwiceAndLosesNone(int jumpHours)
    {
        DateTimeOffset start = new(2026, 1, 10, 20, 0, 0, TimeSpan.Zero);
        Blocks blocks = new Blocks().Hours(start, 7).Hours(start.AddHours(7 + jumpHours), 3).Hours(start.AddHours(10), 40);
        DayCounting counting = Counted(blocks, "+00:00");

        DayEntry[] all = [.. counting.Over, counting.Now!];

        long next = 1;
        foreach (DayEntry day in all)
        {
            Assert.Equal(next, day.FirstSequence);
            next = day.LastSequence + 1;
        }

        Assert.Equal(blocks.NextSequence, next);
        Assert.Equal(50 * Blocks.Ticks, all.Sum(d => d.Figures.Ticks));
        SameEnergy(Blocks.Of(50 * Blocks.Ticks), all);
        Assert.Equal(new DateOnly(2026, 1, 12), counting.Now!.Date);
    }

    [Fact]
    public void Clock_SetBackOverMidnight_GivesTheDateTwoStretchesAndOneDay()
    {
        DateTimeOffset midnight = new(2026, 1, 11, 0, 0, 0, TimeSpan.Zero);
        DayCounting counting = Counted(new Blocks().Hours(midnight.AddHours(-3), 4).Hours(midnight.AddHours(-1), 4), "+00:00");

        Assert.Equal([10, 11, 10], counting.Over.Select(d => d.Date.Day));
        IReadOnlyList<SpanSum> days = SpanSum.ByDay([.. counting.Over, counting.Now!]);
        Assert.Equal([("2026-01-10", 4.0), ("2026-01-11", 4.0)], days.Select(d => (d.Span, d.RecordedHours)));
    }

    [Theory]
    [InlineData(5, 0)]
    [InlineData(20, 0)]
    [InlineData(33, 17)]
    [InlineData(60, 59)]
    public void Counting_TakenUpAnywhere_GivesWhatOneGoGives(int hours, int ticksCut)
    {
        DateTimeOffset start = new(2026, 1, 10, 7, 0, 0, TimeSpan.Zero);
        Blocks blocks = new Blocks().Hours(start, 80);
        DayCounting oneGo = Counted(blocks, "+00:00");
        DayCounting first = Counted(blocks.All.Take(hours), "+00:00", null);

        // Blocks that were small when the edge was kept may have been joined since: the first is then cut.
        BlockAccount[] later = [.. blocks.All.Where(b => b.LastSequence > (first.OverTo?.Sequence ?? 0))];
        if (ticksCut > 0)
        {
            later[0] = later[0] with { Before = null };
        }

        DayCounting second = Counted(later, "+00:00", first.OverTo);

        DayEntry[] inTwo = [.. first.Over, .. second.Over, second.Now!];
        DayEntry[] inOne = [.. oneGo.Over, oneGo.Now!];
        Assert.Equal(inOne, inTwo);
    }

    [Fact]
    public void Totals_ThatBeganAnew_AreCountedFromThere()
    {
        DateTimeOffset start = new(2026, 1, 10, 1, 0, 0, TimeSpan.Zero);
        Blocks blocks = new Blocks().Hours(start, 5).Add(start.AddHours(5), before: default(Totals)).Hours(start.AddHours(6), 3);
        DayCounting counting = Counted(blocks, "+00:00");

        SameEnergy(Blocks.Of(9 * Blocks.Ticks), [.. counting.Over, counting.Now!]);
    }

    [Fact]
    public void Ticks_DroppedOverMidnight_CostNoHeat()
    {
        DateTimeOffset start = new(2026, 1, 10, 20, 0, 0, TimeSpan.Zero);
        Blocks blocks = new Blocks().Hours(start, 3);
        blocks.NextSequence += 120;
        Totals after = Blocks.Of(5 * Blocks.Ticks);
        blocks.Add(start.AddHours(5), before: after).Hours(start.AddHours(6), 2);
        DayCounting counting = Counted(blocks, "+00:00");

        SameEnergy(Blocks.Of(8 * Blocks.Ticks), [.. counting.Over, counting.Now!]);
        Assert.Equal(6 * Blocks.Ticks, counting.Over[0].Figures.Ticks + counting.Now!.Figures.Ticks);
    }

    [Fact]
    public void Pump_ThatRunsOnOverBlocksAndMidnight_StartsOnce()
    {
        DateTimeOffset start = new(2026, 1, 10, 22, 0, 0, TimeSpan.Zero);
        DayCounting counting = Counted(new Blocks().Hours(start, 5).Add(start.AddHours(5), pumpOn: false).Add(start.AddHours(6)), "+00:00");

        Assert.Equal((1, 1), (counting.Over[0].Figures.PumpStarts, counting.Now!.Figures.PumpStarts));
    }

    [Fact]
    public void Days_OfAnyClock_SumToTheSeason()
    {
        Random random = new(7);
        for (int trial = 0; trial < 200; trial++)
        {
            DateTimeOffset at = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);
            Blocks blocks = new();
            for (int i = 0; i < 60; i++)
            {
                int ticks = random.Next(1, 61);
                blocks.Add(at, ticks, pumpOn: random.Next(3) > 0);
                at = at.AddMinutes(ticks + (random.Next(12) == 0 ? random.Next(-3000, 3000) : 0));
            }

            DayCounting counting = Counted(blocks, NewYork);

            DayEntry[] all = [.. counting.Over, counting.Now!];
            SameEnergy(blocks.All[^1].After, all);
            Assert.Equal(blocks.NextSequence - 1, all.Sum(d => d.Figures.Ticks));
            Assert.Equal(SpanSum.Of("", all).WaterKWh, SpanSum.ByDay(all).Sum(d => d.WaterKWh), 1e-9);
            Assert.Equal(SpanSum.Of("", all).WaterErrorKWh, SpanSum.ByMonth(all).Sum(d => d.WaterErrorKWh), 1e-9);
        }
    }

    private static DayCounting Counted(Blocks blocks, string zone) => Counted(blocks.All, zone, null);

    private static DayCounting Counted(IEnumerable<BlockAccount> blocks, string zone, Edge? from)
    {
        AccountRules rules = Blocks.Rules(zone);
        DayCounting counting = new(from, _ => rules);
        foreach (BlockAccount block in blocks)
        {
            counting.Add(block);
        }

        return counting;
    }

    // Sums of doubles in another order: equal but for their last digits.
    private static void SameEnergy(Totals expected, IReadOnlyList<DayEntry> days)
    {
        Assert.Equal(expected.WaterJoules, days.Sum(d => d.Energy.WaterJoules), 1e-3);
        Assert.Equal(expected.WaterErrorJoules, days.Sum(d => d.Energy.WaterErrorJoules), 1e-3);
        Assert.Equal(expected.AirJoules, days.Sum(d => d.Energy.AirJoules), 1e-3);
        Assert.Equal(expected.PumpJoules, days.Sum(d => d.Energy.PumpJoules), 1e-3);
        Assert.Equal(expected.BlowerJoules, days.Sum(d => d.Energy.BlowerJoules), 1e-3);
        Assert.Equal(expected.Litres, days.Sum(d => d.Energy.Litres), 1e-3);
    }
}
