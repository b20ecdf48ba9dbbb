using PileController.Panel.Nights;
using PileController.Records;

namespace PileController.Tests.Panel.Nights;

public class LastDayTests
{
    private const long Minute = 60_000;

    [Fact]
    public void Of_FourMinutes_SumsWhatIsKnown()
    {
        LastDay day = Of([6, 4, null, 5.5], [600, 600, null, 1200], [0, 1, null, 1]);

        Assert.Equal(3.8, day.ColdestC);
        Assert.Equal(Minute, day.ColdestUtcMs);
        Assert.Equal(Minute, day.BelowMs);
        Assert.Equal(2400.0 / 60_000, day.WaterKWh!.Value, 12);
        Assert.Equal(1, day.Starts);
        Assert.Equal(Minute, day.UntoldMs);
    }

    [Fact]
    public void Of_APumpFoundRunningAfterAGap_HasNotBeenSeenToStart()
    {
        Assert.Equal(0, Of([6, 6, 6], [0, 0, 0], [0, null, 1]).Starts);
    }

    [Fact]
    public void Of_AMinimumThatWasRaised_JudgesEachMinuteByItsOwn()
    {
        LastDay day = Of([5.5, 5.5, 5.5, 5.5], [0, 0, 0, 0], [0, 0, 0, 0], utc => utc < 3 * Minute ? 5 : 6.1);

        Assert.Equal(Minute, day.BelowMs);
    }

    [Fact]
    public void Of_NothingRecorded_KnowsNothing()
    {
        LastDay day = Of([null, null], [null, null], [null, null]);

        Assert.Equal(new LastDay(null, null, null, null, null, null, 2 * Minute, 60), day);
    }

    private static LastDay Of(double?[] house, double?[] water, double?[] pump, Func<long, double>? minimumAt = null) =>
        LastDay.Of(Points(house), Points(water), Points(water), Points(pump), house.Length * Minute, minimumAt ?? (_ => 5), 60);

    private static SeriesPoint[] Points(double?[] means) =>
        [.. means.Select((mean, index) => new SeriesPoint(index * Minute, mean - 0.2, mean, mean + 0.2 - (mean == 0 ? 0.2 : 0), mean is null ? 0 : 6))];
}
