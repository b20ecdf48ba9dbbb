using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Sky.Weather;

public class HourlyWeatherTests
{
    [Fact]
    public void HourlyNormals_AsPublished_KeepTheirValues()
    {
        WeatherSeries series = Sample.File("seattle-hourly-normals-2010.csv", Sample.Seattle);
        Assert.Equal(8759, series.OutsideC.Count);
        Assert.Empty(series.Gaps);
        WeatherSample first = series.At(Sample.Utc(2010, 1, 1, 1, Sample.Seattle));
        Assert.Equal(4.0, first.OutsideC);
        Assert.Equal(3.8, first.WindMPerS);
        Assert.Equal(101_660, first.PressurePa);
        Assert.Equal(WeatherOrigin.Measured, series.Origins.PressurePa);
        Assert.Equal(WeatherOrigin.Estimated, series.Origins.SunWPerM2);
        Assert.Equal(WeatherOrigin.Assumed, series.Origins.Humidity);
    }

    [Fact]
    public void At_BetweenHours_LiesStraightBetweenThem()
    {
        WeatherSeries series = Sample.Text("date,temperature,sun,humidity\n2013-01-01T10:00:00,2,100,0.5\n2013-01-01T11:00:00,6,200,0.7\n");
        WeatherSample sample = series.At(Sample.Utc(2013, 1, 1, 10.25, Sample.NewYork));
        Assert.Equal(3, sample.OutsideC, 1e-12);
        Assert.Equal(125, sample.SunWPerM2, 1e-12);
        Assert.Equal(0.55, sample.Humidity, 1e-12);
        Assert.Equal(WeatherOrigin.Measured, series.Origins.SunWPerM2);
    }

    [Fact]
    public void At_ItsEnds_GivesTheEndsAndBeyondThemNamesTheCover()
    {
        WeatherSeries series = Sample.Text("date,temperature\n2013-01-01T10:00:00,2\n2013-01-01T11:00:00,6\n");
        Assert.Equal(2, series.At(series.CoversFrom).OutsideC);
        Assert.Equal(6, series.At(series.CoversTo).OutsideC);
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => series.At(series.CoversTo + 1));
        Assert.Contains("from 2013-01-01 15:00 UTC to 2013-01-01 16:00 UTC", error.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => series.At(series.CoversFrom - 1));
    }

    [Fact]
    public void Stamp_WithItsOwnOffset_IsTakenAtItsWord()
    {
        WeatherSeries series = Sample.Text("date,temperature\n2013-01-01T10:00:00Z,2\n2013-01-01T13:00:00+02:00,6\n");
        Assert.Equal(new DateTimeOffset(2013, 1, 1, 10, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds(), series.CoversFrom);
        Assert.Equal(2, series.OutsideC.Count);
    }

    [Fact]
    public void Gap_OfAFewHours_IsDrawnStraightAndReported()
    {
        WeatherSeries series = Sample.Text("date,temperature\n2013-01-01T10:00:00,2\n2013-01-01T14:00:00,6\n");
        Assert.Equal([2, 3, 4, 5, 6], series.OutsideC);
        WeatherGap gap = Assert.Single(series.Gaps);
        Assert.Equal("temperature missing from 2013-01-01 11:00 until 2013-01-01 14:00: drawn straight between its neighbours.", gap.Sentence);
    }

    [Fact]
    public void Gap_OnALeapDay_TakesTheDayBefore()
    {
        WeatherSeries series = Sample.Text(Hours(new DateTime(2012, 2, 27), 96, skipLeapDay: true));
        Assert.Equal(96, series.OutsideC.Count);
        Assert.Equal(series.OutsideC.Skip(24).Take(24), series.OutsideC.Skip(48).Take(24));
        Assert.Equal(
            "temperature missing from 2012-02-29 00:00 until 2012-03-01 00:00: the same hours of the day before taken.",
            Assert.Single(series.Gaps).Sentence);
    }

    [Fact]
    public void Gap_LongerThanAllowed_MakesTheFileUnusable() =>
        Assert.Contains(
            "temperature missing from 2012-02-29 00:00 until 2012-03-01 00:00. Gaps up to 12 h",
            Sample.Faults(Hours(new DateTime(2012, 2, 27), 96, skipLeapDay: true), new WeatherOptions { LongestBridgeHours = 12 }));

    [Fact]
    public void EmptyCell_OfOneColumn_IsAGapOfThatColumnAlone()
    {
        WeatherSeries series = Sample.Text("date,temperature,wind\n2013-01-01T10:00:00,2,1\n2013-01-01T11:00:00,6,\n2013-01-01T12:00:00,7,3\n");
        Assert.Equal(2, series.WindMPerS[1]);
        Assert.Equal("wind", Assert.Single(series.Gaps).Quantity);
    }

    [Theory]
    [InlineData("date,temperature\n2013-01-01,2\n", "line 2, date: \"2013-01-01\"")]
    [InlineData("date,temperature\n2013-01-01T10:00:00,2\n2013-01-01T09:00:00,2\n", "line 3, date: \"2013-01-01T09:00:00\"; allowed is a time after")]
    [InlineData("date,temperature\n2013-01-01T10:00:00,2\n2013-01-01T11:30:00,2\n", "allowed is a time whole hours after the first")]
    [InlineData("date,temperature,humidity\n2013-01-01T10:00:00,2,80\n", "line 2, humidity: \"80\"; allowed is 0 to 1 (fraction)")]
    [InlineData("date,temperature,pressure\n2013-01-01T10:00:00,2,101325\n", "line 2, pressure: \"101325\"; allowed is 300 to 1100 hPa")]
    [InlineData("date,wind\n2013-01-01T10:00:00,2\n", "no column temperature; there are date, wind")]
    [InlineData("date,temperature,date\n2013-01-01T10:00:00,2,x\n", "the column date stands there twice")]
    public void File_OfWrongShape_IsRefusedWithTheReason(string text, string reason) => Assert.Contains(reason, Sample.Faults(text));

    [Fact]
    public void Faults_WhenVeryMany_AreCut()
    {
        string text = "date,temperature\n" + string.Concat(Enumerable.Range(0, 50).Select(_ => "x,1\n"));
        var error = Assert.Throws<WeatherFileException>(() => Sample.Text(text));
        Assert.Equal(21, error.Faults.Count);
        Assert.Equal("made.csv: 30 more faults.", error.Faults[^1]);
    }

    [Fact]
    public void Options_OutOfRange_AreRefusedByName()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(
            () => Sample.Text("date,temperature\n2013-01-01T10:00:00,2\n", null, new WeatherOptions { AssumedHumidity = 80 }));
        Assert.Contains("AssumedHumidity must lie from 0 to 1", error.Message);
    }

    [Fact]
    public void Values_OfAnySeries_LieOnTheirGrain()
    {
        WeatherSeries series = Sample.File("new-york-daily-2012-2013.csv", Sample.NewYork);
        Assert.All(series.OutsideC, value => Assert.Equal(Math.Round(value, 2), value));
        Assert.All(series.SunWPerM2, value => Assert.Equal(Math.Round(value, 1), value));
    }

    private static string Hours(DateTime start, int count, bool skipLeapDay) =>
        "date,temperature\n" + string.Concat(
            Enumerable.Range(0, count)
                .Select(hour => (Time: start.AddHours(hour), Temperature: hour % 24 + (hour / 24 * 0.5)))
                .Where(row => !skipLeapDay || row.Time is not { Month: 2, Day: 29 })
                .Select(row => $"{row.Time:yyyy-MM-ddTHH:mm:ss},{row.Temperature}\n"));
}
