using PileController.Control;
using PileController.Control.Estimation;
using PileController.Control.Foresight;
using PileController.Ledgers;
using PileController.Ledgers.Counting;
using PileController.Ledgers.Pages;
using PileController.Plans.Money;

namespace PileController.Tests.Ledgers;

public class SumsTests
{
    private static readonly DateOnly First = new(2025, 11, 1);

    [Fact]
    public void Season_Summed_IsItsDaysAndTheirErrorBandsDoNotCancel()
    {
        LedgerPage page = LedgerPage.Of(SampleBook.View(SampleBook.Two()), SampleBook.Two().Seasons[1]);

        double expected = Enumerable.Range(0, 150).Sum(i => 10.0 + (i % 7));
        Assert.Equal(expected, page.Total.WaterKWh, 9);
        Assert.Equal(0.04 * expected, page.Total.WaterErrorKWh, 9);
        Assert.Equal(expected, page.Days.Sum(d => d.WaterKWh), 9);
        Assert.Equal(["2025-11", "2025-12", "2026-01", "2026-02", "2026-03"], page.Months.Select(m => m.Span));
        Assert.Equal(expected, page.Months.Sum(m => m.WaterKWh), 9);
        Assert.Equal((150, 150), (page.Total.Days, page.Total.Nights));
        Assert.Equal(page.Days.Count(d => int.Parse(d.Span[^2..], System.Globalization.CultureInfo.InvariantCulture) % 5 != 0), page.Total.NightsKept);
        Assert.Equal(0.1, page.Total.InferredShare, 9);

        // Day 8 and day 17 are coldest; the first of them counts.
        Assert.Equal(new NightKept(new DateOnly(2025, 11, 8), -8, 5), page.Total.ColdestNightKept);
    }

    [Fact]
    public void Money_OfASeason_IsHeatAtTheFuelsPriceLessElectricity()
    {
        LedgerPage page = LedgerPage.Of(SampleBook.View(SampleBook.Two()), SampleBook.Two().Seasons[1]);
        double perHeat = Fuels.PricePerHeatKWh(Fuels.All.Single(f => f.Name == "propane"), 2.8);

        Assert.Equal(page.Total.HeatKWh * perHeat, page.Money!.HeatWorth, 9);
        Assert.Equal(page.Total.WaterErrorKWh * perHeat, page.Money.HeatWorthError, 9);
        Assert.Equal(150 * 0.12 * 0.17, page.Money.ElectricityCost, 9);
        Assert.Equal(page.Money.HeatWorth - page.Money.ElectricityCost, page.Money.Saved, 9);
        Assert.Equal((110.0, 90.0), (page.Money.PartsPaid, page.Money.PartsReused));
    }

    [Fact]
    public void Book_WithoutASeason_ShowsItsDaysAndNoMoney()
    {
        LedgerPage page = LedgerPage.Of(SampleBook.View(SampleBook.Two() with { Seasons = [] }), null);

        Assert.Equal(300, page.Days.Count);
        Assert.Null(page.Money);
    }

    [Fact]
    public void Heap_BelowHalfItsBestWeek_HasFadedOnThatDay()
    {
        // Two weeks at 600 W, then 200 W: the mean of seven days is below 300 W with the sixth of them, 600 + 6 x 200 over 7 = 257 W.
        DayEntry[] days = [.. Enumerable.Range(0, 40).Select(i => SampleBook.Day(First.AddDays(i), 1 + (8640L * i), netWatts: i < 14 ? 600 : 200))];

        Fading fading = Fading.Of(days);

        Assert.Equal(600, fading.BestWeekWatts!.Value, 6);
        Assert.Equal(First.AddDays(14 + 6 - 1), fading.FadedOn);
        Assert.Equal(First.AddDays(39), fading.LastBorneOn);
    }

    [Fact]
    public void Heap_ThatIsStillWarmingUp_HasNotFaded()
    {
        DayEntry[] days = [.. Enumerable.Range(0, 30).Select(i => SampleBook.Day(First.AddDays(i), 1 + (8640L * i), netWatts: 20 * i))];

        Assert.Null(Fading.Of(days).FadedOn);
        Assert.Equal(First.AddDays(29), Fading.Of(days).BestWeekEndsOn);
    }

    [Theory]
    [InlineData(3, 600, false)]
    [InlineData(40, 600, true)]
    [InlineData(40, -50, true)]
    public void Heap_ThatKeepsOnOrWasSeenTooShort_HasNotFaded(int length, double watts, bool knowsItsBest)
    {
        DayEntry[] days = [.. Enumerable.Range(0, length).Select(i => SampleBook.Day(First.AddDays(i), 1 + (8640L * i), netWatts: watts))];

        Assert.Null(Fading.Of(days).FadedOn);
        Assert.Equal(knowsItsBest, Fading.Of(days).BestWeekWatts is not null);
    }

    [Fact]
    public void Lessons_OfAMemory_AreItsFactorsAndHowSureItIs()
    {
        double[] mean = new double[HeapBelief.Size];
        double[] upper = new double[HeapBelief.UpperSize];
        mean[HeapBelief.FirstFigure + 5] = Math.Log(0.8);
        mean[HeapBelief.FirstFigure + 4] = Math.Log(1.1);
        mean[HeapBelief.FirstFigure + 3] = Math.Log(1.4);
        int at = 0;
        for (int row = 0; row < HeapBelief.Size; row++)
        {
            for (int column = row; column < HeapBelief.Size; column++, at++)
            {
                upper[at] = row == column ? 0.01 * (row - HeapBelief.FirstFigure) * (row - HeapBelief.FirstFigure) : 0.5;
            }
        }

        HeapBelief belief = new() { Mean = mean, Upper = upper };
        Memory memory = Memory.Fresh with
        {
            Estimator = Memory.Fresh.Estimator with { Belief = belief },
            House = HouseMemory.Fresh with { Learned = new HouseLearned { LossFactor = 1.2, Hours = 300 } },
        };

        Lessons lessons = Lessons.Of(memory, new ControlSettings(), []);

        Near(0.8, Math.Exp(0.5), lessons.Coil);
        Near(1.1, Math.Exp(0.4), lessons.HeapCapacity);
        Near(1.4, Math.Exp(0.3), lessons.HeapLoss);
        Assert.Equal((1.2, 300), (lessons.HouseLoss!.Value, lessons.HouseHours));
        Assert.Equal(belief.CapacityFactor, lessons.HeapCapacity!.Factor, 12);
        Assert.Null(Lessons.Of(Memory.Fresh, new ControlSettings(), []).Coil);
        Assert.Null(Lessons.Of(Memory.Fresh, new ControlSettings(), []).HouseLoss);
    }

    private static void Near(double factor, double spread, LearnedFactor? learned)
    {
        Assert.Equal(factor, learned!.Factor, 12);
        Assert.Equal(spread, learned.Spread, 12);
    }
}
