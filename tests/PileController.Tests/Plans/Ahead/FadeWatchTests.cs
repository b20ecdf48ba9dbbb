using PileController.Plans.Ahead;

namespace PileController.Tests.Plans.Ahead;

/// <summary>The day a heap fades, on curves whose half is known.</summary>
public class FadeWatchTests
{
    [Fact]
    public void Fade_OfASteadyHeap_NeverComes() => Assert.Null(Fade(200, day => 1000));

    [Fact]
    public void Fade_OfAStepToAThird_ComesWhenTheWeeksMeanIsBelowHalf()
    {
        // From day 51 a third: after n such days the week's mean is 1 − 2n/21, below a half from n = 6, day 56.
        Assert.Equal(56, Fade(200, day => day <= 50 ? 900 : 300));
    }

    [Fact]
    public void Fade_OfAnExponentialDecline_ComesAfterItsHalfLife()
    {
        // The mean of seven days falls in the same proportion as the days: its best is that of days 1 to 7, half of that
        // 30 days later; the first day below is day 38.
        Assert.Equal(38, Fade(200, day => Math.Pow(0.5, day / 30.0)));
    }

    [Fact]
    public void Fade_OfWhatCameBeforeLighting_DoesNotCount()
    {
        // A great flush before lighting is no best: the heap is judged by its days after it.
        Assert.Null(Fade(200, day => day <= 10 ? 5000 : 1000, litFromDay: 20));

        // Lit on day 8 the best week is all at 5000. After n days at 1000 the mean is 5000 − 4000 n/7, below 2500 from n = 5.
        Assert.Equal(15, Fade(200, day => day <= 10 ? 5000 : 1000, litFromDay: 8));
    }

    [Fact]
    public void Fade_OnceItHasCome_StaysThoughTheHeapComesBack() =>
        Assert.Equal(56, Fade(200, day => day <= 50 || day > 70 ? 900 : 300));

    private static int? Fade(int days, Func<int, double> generated, int litFromDay = 1)
    {
        FadeWatch watch = new();
        for (int day = 1; day <= days; day++)
        {
            watch.Add(generated(day), day >= litFromDay);
        }

        return watch.FadedOnDay;
    }
}
