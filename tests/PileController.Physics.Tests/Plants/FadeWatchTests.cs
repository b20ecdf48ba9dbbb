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
}
