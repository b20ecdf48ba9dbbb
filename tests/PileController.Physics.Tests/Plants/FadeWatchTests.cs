using PileController.Physics.Plants;

namespace PileController.Physics.Tests.Plants;

public class FadeWatchTests
{
    [Fact]
    public void Fade_OfAHeapThatDropsToNothing_ComesWhenTheWeekHoldsLessThanHalf()
    {
        // Ten days of 1000 W, then none: the mean of seven is 4/7 after three such days and 3/7 after four.
        FadeWatch watch = new();
        for (int day = 1; day <= 10; day++)
        {
            watch.Add(day, 1000, 5);
        }

        for (int day = 11; day <= 13; day++)
        {
            watch.Add(day, 0, 5);
            Assert.Null(watch.FadesOnDay);
        }

        watch.Add(14, 0, 5);
        watch.Add(15, 0, 5);
        Assert.Equal(14, watch.FadesOnDay);
    }

    [Fact]
    public void Fade_OfAHeapThatNeverLit_IsNotTold()
    {
        FadeWatch watch = new();
        for (int day = 1; day <= 30; day++)
        {
            watch.Add(day, day < 10 ? 500 : 0, null);
        }

        Assert.Null(watch.FadesOnDay);
    }

    [Fact]
    public void Fade_AtExactlyHalf_HasNotCome()
    {
        FadeWatch watch = new();
        for (int day = 1; day <= 30; day++)
        {
            watch.Add(day, day <= 7 ? 800 : 400, 3);
        }

        Assert.Null(watch.FadesOnDay);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(30)]
    [InlineData(75)]
    public void Fade_OfAnExponentialDecline_ComesAHalfLifeAfterItsBestWeek(int halfLife)
    {
        // The mean of seven days falls in the proportion of the days themselves: its best is that of days 1 to 7, and it
        // stands at just half of that a half-life later (to the last bits, so on that day or the next).
        FadeWatch watch = new();
        for (int day = 1; day <= 200; day++)
        {
            watch.Add(day, 2000 * Math.Pow(0.5, (double)day / halfLife), 2);
        }

        Assert.InRange(watch.FadesOnDay!.Value, 7 + halfLife, 8 + halfLife);
    }
}
