using PileController.Physics.Sky;
using PileController.Physics.Sky.Weather;
using PileController.Plans.Climate;

namespace PileController.Tests.Plans.Climate;

public class ClimateSummaryTests
{
    private const long Hour = 3_600_000;

    private static readonly Place NewYork = new(40.78, -73.97, TimeSpan.FromHours(-5));
    private static readonly Place Seattle = new(47.45, -122.31, TimeSpan.FromHours(-8), 130);

    [Fact]
    public void Summary_OfFourHours_IsWhatAPersonWouldAddUp()
    {
        WeatherSeries weather = Hours("-4,0,2,10");

        ClimateSummary summary = ClimateSummary.Of(weather, weather.CoversFrom, weather.CoversTo + Hour, 5);

        Assert.Equal(-4, summary.ColdestC);
        Assert.Equal(2, summary.MeanC);
        Assert.Equal(9 + 5 + 3, summary.DegreeHours);
        Assert.Equal(1, summary.HoursBelowZero);
    }

    [Fact]
    public void Summary_OfAHundredAndOneHours_HasTheSecondColdestAsItsDesignNight()
    {
        WeatherSeries weather = Hours(string.Join(',', Enumerable.Range(-10, 101).Reverse().Select(c => c / 2.0)));

        Assert.Equal(-4.5, ClimateSummary.Of(weather, weather.CoversFrom, weather.CoversTo + Hour, 0).DesignC, 9);
    }

    [Fact]
    public void Summary_OfPartOfTheWeather_CountsItsWholeHoursOnly()
    {
        WeatherSeries weather = Hours("-4,0,2,10");

        ClimateSummary summary = ClimateSummary.Of(weather, weather.CoversFrom + 1, weather.CoversFrom + (3 * Hour), 5);

        Assert.Equal(0, summary.ColdestC);
        Assert.Equal(1, summary.MeanC);
    }

    [Theory]
    [InlineData(-Hour, 4 * Hour)]
    [InlineData(0, 5 * Hour)]
    [InlineData(2 * Hour, 2 * Hour)]
    [InlineData(Hour + 1, (2 * Hour) - 1)]
    public void Summary_OfASpanWithoutWeather_IsRefused(long from, long to)
    {
        WeatherSeries weather = Hours("-4,0,2,10");

        Assert.Throws<ArgumentOutOfRangeException>(() => ClimateSummary.Of(weather, weather.CoversFrom + from, weather.CoversFrom + to, 5));
    }

    // NOAA NCEI 1981-2010 hourly normals of Seattle; the mean of the year is 11 to 12 °C.
    [Fact]
    public void Summary_OfSeattlesNormals_AgreesWithTheFile()
    {
        WeatherSeries weather = File("seattle-hourly-normals-2010.csv", Seattle);
        double[] file = [.. weather.OutsideC];

        ClimateSummary year = ClimateSummary.Of(weather, weather.CoversFrom, weather.CoversTo + Hour, 18);

        Assert.Equal(file.Min(), year.ColdestC);
        Assert.InRange(year.MeanC, 10.5, 12.5);
        Assert.InRange(year.DesignC, year.ColdestC, year.MeanC);
        Assert.Equal(file.Where(c => c < 18).Sum(c => 18 - c), year.DegreeHours, 6);
    }

    [Fact]
    public void Months_OfAWinter_AddUpToItsSummary()
    {
        WeatherSeries weather = File("new-york-daily-2012-2013.csv", NewYork);
        long from = new DateTimeOffset(2012, 10, 1, 0, 0, 0, NewYork.UtcOffset).ToUnixTimeMilliseconds();
        long to = new DateTimeOffset(2013, 4, 1, 0, 0, 0, NewYork.UtcOffset).ToUnixTimeMilliseconds();

        ClimateSummary winter = ClimateSummary.Of(weather, from, to, 7);
        IReadOnlyList<ClimateMonth> months = ClimateMonth.Of(weather, from, to, 7, NewYork.UtcOffset);

        Assert.Equal([10, 11, 12, 1, 2, 3], months.Select(m => m.Month));
        Assert.Equal(winter.DegreeHours, months.Sum(m => m.DegreeHours), 6);
        Assert.Equal(winter.ColdestC, months.Min(m => m.ColdestC));
        Assert.True(months[3].MeanC < months[0].MeanC, "January is colder than October");
    }

    [Fact]
    public void Summary_OfAHigherSetPoint_WantsMoreHeat()
    {
        WeatherSeries weather = File("new-york-daily-2012-2013.csv", NewYork);
        double[] wanted = [.. new double[] { -20, 0, 7, 18 }.Select(c => ClimateSummary.Of(weather, weather.CoversFrom, weather.CoversTo, c).DegreeHours)];

        Assert.Equal(wanted.Order(), wanted);
        Assert.True(wanted[1] < wanted[2]);
    }

    private static WeatherSeries Hours(string celsius) => WeatherFile.Read(
        new StringReader("date,temperature\n" + string.Join('\n', celsius.Split(',').Select((c, at) => $"{new DateTime(2020, 1, 1).AddHours(at):yyyy-MM-ddTHH:mm:ss},{c}"))),
        "made.csv", NewYork);

    private static WeatherSeries File(string name, Place place)
    {
        using StreamReader reader = new(Path.Combine(AppContext.BaseDirectory, "Weather", name));
        return WeatherFile.Read(reader, name, place);
    }
}
