using PileController.Physics.Sky;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Sky.Weather;

public class EpwWeatherTests
{
    private const string Header =
        "LOCATION,Alder Bank,-,-,made for a test,0,44.5,-72.5,-5.0,250\n"
        + "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\n"
        + "COMMENTS 1,-\nCOMMENTS 2,-\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n";

    [Fact]
    public void Epw_OfTwoDays_StandsAtTheEndsOfItsHours()
    {
        WeatherSeries series = Read(Header + Day(1987, 1, 1) + Day(1987, 1, 2));
        Place place = new(44.5, -72.5, TimeSpan.FromHours(-5), 250);
        Assert.Equal(Sample.Utc(1987, 1, 1, 1, place), series.CoversFrom);
        Assert.Equal(Sample.Utc(1987, 1, 3, 0, place), series.CoversTo);
        Assert.Equal(-3.0, series.OutsideC[6]);
        Assert.Equal(0.7, series.Humidity[6]);
        Assert.Equal(98_500, series.PressurePa[6]);
        Assert.Equal(2.5, series.WindMPerS[6]);
        Assert.Equal(
            new WeatherOrigins(WeatherOrigin.Measured, WeatherOrigin.Measured, WeatherOrigin.Measured, WeatherOrigin.Measured, WeatherOrigin.Measured),
            series.Origins);
    }

    [Fact]
    public void EpwSun_GivenAsHourlyMeans_KeepsItsSum()
    {
        WeatherSeries series = Read(Header + Day(1987, 1, 1) + Day(1987, 1, 2));
        Assert.Equal(2 * 8 * 100, series.SunWPerM2.Sum(), 1e-9);

        // Hours 9 to 16 hold 100 Wh/m²: half of the first one's mean stands at its start, 08:00.
        Assert.Equal(50, series.SunWPerM2[7]);
        Assert.Equal(100, series.SunWPerM2[8]);
    }

    [Fact]
    public void EpwOfSeveralYears_PutIntoOne_FollowsOn()
    {
        WeatherSeries series = Read(Header + Day(1987, 1, 31) + Day(1991, 2, 1), 2012);
        Assert.Equal(48, series.OutsideC.Count);
        Assert.Equal(2012, DateTimeOffset.FromUnixTimeMilliseconds(series.CoversFrom).Year);
    }

    [Fact]
    public void EpwMarkForMissing_InOneCell_IsAGap()
    {
        WeatherSeries series = Read(Header + Day(1987, 1, 1).Replace("1987,1,1,7,60,-,-3.0", "1987,1,1,7,60,-,99.9", StringComparison.Ordinal));
        Assert.Equal("temperature missing from 1987-01-01 07:00 until 1987-01-01 08:00: drawn straight between its neighbours.", Assert.Single(series.Gaps).Sentence);
        Assert.Equal(-3.0, series.OutsideC[6]);
    }

    [Theory]
    [InlineData("1987,1,1,7,60,-,-3.0", "1987,1,1,7,60,-,hot", "line 15, dry bulb: \"hot\"")]
    [InlineData("1987,1,1,7,60,-,-3.0", "1987,2,30,7,60,-,-3.0", "line 15, date: \"1987-2-30-7\"")]
    [InlineData("1987,1,1,7,60,-,-3.0", "1987,1,1,5,60,-,-3.0", "line 15, date: \"1987-1-1-5\"; allowed is an hour after the line before")]
    [InlineData(",44.5,", ",144.5,", "line 1, latitude: \"144.5\"")]
    public void Epw_WithABadCell_NamesLineColumnAndValue(string good, string bad, string expected)
    {
        string text = (Header + Day(1987, 1, 1)).Replace(good, bad, StringComparison.Ordinal);
        Assert.Contains(expected, Assert.Throws<WeatherFileException>(() => Read(text)).Message);
    }

    [Fact]
    public void Epw_CutShort_IsRefused()
    {
        Assert.Contains("no rows", Assert.Throws<WeatherFileException>(() => Read(Header)).Message);
        Assert.Contains("22 cells", Assert.Throws<WeatherFileException>(() => Read(Header + "1987,1,1,1,60,-,2\n")).Message);
    }

    private static WeatherSeries Read(string text, int? year = null) =>
        WeatherFile.Read(new StringReader(text), "made.epw", Sample.NewYork, null, year);

    private static string Day(int year, int month, int day) => string.Concat(Enumerable.Range(1, 24).Select(hour =>
        $"{year},{month},{day},{hour},60,-,-3.0,-6,70,98500,0,0,200,{(hour is >= 9 and <= 16 ? 100 : 0)},0,0,0,0,0,0,180,2.5,5,5,20,77777,9,999999999,10,0.1,0,88,0.2,0,1\n"));
}
