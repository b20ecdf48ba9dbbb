using PileController.Physics.Sky.Weather;
using PileController.Plans.Ahead;

namespace PileController.Tests.Plans.Ahead;

public class WinterFindingTests
{
    private const int Offset = -300;

    [Theory]
    [InlineData(AheadBench.NewYork, 150, "2012")]
    [InlineData(AheadBench.Seattle, 150, "2012,2013,2014")]

    // Seattle's record ends with 2015: a winter of 60 days fits into its last autumn.
    [InlineData(AheadBench.Seattle, 60, "2012,2013,2014,2015")]
    public void Winters_OfARecord_AreThoseWhollyCovered(string file, int days, string years)
    {
        WeatherSeries weather = AheadBench.Weather(file);
        IReadOnlyList<AheadWinter> winters = WinterFinding.In(file, weather, 11, 1, days, Offset);

        Assert.Equal(years, string.Join(',', winters.Select(w => w.Start.Year)));
        Assert.All(winters, w => Assert.InRange(w.StartUtcMilliseconds, weather.CoversFrom, weather.CoversTo - (days * 86_400_000L)));
        Assert.All(winters, w => Assert.Equal(
            new DateTimeOffset(w.Start.ToDateTime(TimeOnly.MinValue), TimeSpan.FromHours(-5)).ToUnixTimeMilliseconds(), w.StartUtcMilliseconds));
    }

    [Fact]
    public void Winters_OneHourShort_AreNotTaken()
    {
        WeatherSeries weather = Hourly(new DateTime(2012, 11, 1), 10 * 24);
        Assert.Empty(WinterFinding.In("made.csv", weather, 11, 1, 10, Offset));
        Assert.Single(WinterFinding.In("made.csv", Hourly(new DateTime(2012, 11, 1), (10 * 24) + 1), 11, 1, 10, Offset));
    }

    [Theory]
    [InlineData(5, true)]
    [InlineData(40, false)]
    public void Gap_OfAWinter_IsFoundOnlyWhereItReachesIntoIt(int dayOfTheGap, bool found)
    {
        WeatherSeries weather = Hourly(new DateTime(2012, 11, 1), 60 * 24, without: 24 * dayOfTheGap);
        AheadWinter winter = WinterFinding.In("made.csv", weather, 11, 1, 30, Offset).Single();
        Assert.Equal(found, WinterFinding.GapIn(winter, 30) is not null);
    }

    private static WeatherSeries Hourly(DateTime start, int hours, int without = -1) => WeatherFile.Read(
        new StringReader("date,temperature\n" + string.Join('\n', Enumerable.Range(0, hours).Where(h => h != without)
            .Select(h => $"{start.AddHours(h):yyyy-MM-ddTHH:mm:ss},1"))),
        "made.csv", new Physics.Sky.Place(44.5, -72.5, TimeSpan.FromHours(-5)));
}
