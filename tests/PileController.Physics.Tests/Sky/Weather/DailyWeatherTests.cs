using PileController.Physics.Sky;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Sky.Weather;

public class DailyWeatherTests
{
    [Theory]
    [InlineData("new-york-daily-2012-2013.csv", 547)]
    [InlineData("seattle-daily-2012-2015.csv", 1461)]
    public void DailyFile_AsPublished_CoversEveryHourOfItsDays(string name, int days)
    {
        Place place = name.StartsWith("new", StringComparison.Ordinal) ? Sample.NewYork : Sample.Seattle;
        WeatherSeries series = Sample.File(name, place);
        Assert.Equal(Sample.Utc(2012, 1, 1, 0, place), series.CoversFrom);
        Assert.Equal(Sample.Utc(2012, 1, 1, days * 24, place), series.CoversTo);
        Assert.Equal((days * 24) + 1, series.OutsideC.Count);
        Assert.Empty(series.Gaps);
        Assert.All(series.OutsideC, value => Assert.InRange(value, -40, 50));
        Assert.All(series.SunWPerM2, value => Assert.InRange(value, 0, 1100));
        Assert.Equal(
            new WeatherOrigins(
                WeatherOrigin.SpreadFromDaily, WeatherOrigin.Estimated, WeatherOrigin.SpreadFromDaily, WeatherOrigin.Assumed, WeatherOrigin.Assumed),
            series.Origins);
    }

    [Fact]
    public void Temperature_OfEveryDay_MeetsThatDaysExtremesAtSunriseAndAfterNoon()
    {
        WeatherSeries series = Sample.File("seattle-daily-2012-2015.csv", Sample.Seattle);
        (DateOnly Date, double HighestC, double LowestC)[] days =
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Weather", "seattle-daily-2012-2015.csv"))
                .Skip(1)
                .Select(line => line.Split(','))
                .Select(cells => (DateOnly.Parse(cells[1]), double.Parse(cells[3]), double.Parse(cells[4]))),
        ];
        for (int i = 1; i < days.Length - 1; i++)
        {
            SunDay sun = Sun.Day(Sample.Seattle.LatitudeDegrees, Sample.Seattle.LongitudeDegrees, days[i].Date, Sample.Seattle.UtcOffset);

            // Straight lines between hours miss a half wave of 6 h or longer by less than (span/2)·(π/6)²/8 = 0.0172 of its span.
            double widest = Math.Max(
                days[i].HighestC - days[i].LowestC,
                Math.Max(Math.Abs(days[i - 1].HighestC - days[i].LowestC), Math.Abs(days[i].HighestC - days[i + 1].LowestC)));
            double allowed = 0.01 + (0.0172 * widest);
            Assert.Equal(days[i].LowestC, At(series, days[i].Date, sun.Sunrise!.Value), allowed);
            Assert.Equal(days[i].HighestC, At(series, days[i].Date, sun.SolarNoon.AddHours(2)), allowed);
        }
    }

    [Fact]
    public void Temperature_HalfwayBetweenExtremes_IsTheirMean()
    {
        // Days alike, so that both half waves have one span; the day's lowest and highest stand at sunrise and two hours after noon.
        WeatherSeries series = Sample.Text("date,temp_max,temp_min\n2013-03-20,20,0\n2013-03-21,20,0\n2013-03-22,20,0\n", Sample.Seattle);
        var date = new DateOnly(2013, 3, 21);
        SunDay sun = Sun.Day(Sample.Seattle.LatitudeDegrees, Sample.Seattle.LongitudeDegrees, date, Sample.Seattle.UtcOffset);
        TimeOnly peak = sun.SolarNoon.AddHours(2);
        TimeSpan rise = peak - sun.Sunrise!.Value;
        Assert.Equal(10, At(series, date, sun.Sunrise.Value.Add(rise / 2)), 0.15);
        Assert.Equal(10, At(series, date, peak.Add((TimeSpan.FromDays(1) - rise) / 2)), 0.15);
    }

    [Fact]
    public void Sun_OfADay_AddsUpToItsShareOfTheSunOutsideTheAir()
    {
        WeatherSeries series = Sample.Text("date,temp_max,temp_min\n2013-04-10,16,6\n2013-04-11,20,4\n2013-04-12,9,8\n");
        double fromHours = Enumerable.Range(24, 24).Sum(hour => series.SunWPerM2[hour] * 3600);
        long midnight = Sample.Utc(2013, 4, 11, 0, Sample.NewYork);
        double outsideAir = Enumerable.Range(0, 1440)
            .Sum(minute => 60 * Sunshine.OutsideAirWPerM2(Sun.At(40.78, -73.97, midnight + (minute * 60_000L) + 30_000)));
        Assert.Equal(0.16 * 4 * outsideAir, fromHours, 0.01 * fromHours);
    }

    [Theory]
    [InlineData(9)]
    [InlineData(15)]
    public void Sun_AtAnHour_IsCentredOnIt(int hour)
    {
        // A mean over the hour lies within 1.5 % of the value at its middle here; half an hour off would be 8 % or more.
        WeatherSeries series = Sample.Text("date,temp_max,temp_min\n2013-04-11,20,4\n2013-04-12,20,4\n");
        double outsideAir = Sunshine.OutsideAirWPerM2(Sun.At(40.78, -73.97, Sample.Utc(2013, 4, 11, hour, Sample.NewYork)));
        Assert.Equal(0.16 * 4 * outsideAir, series.SunWPerM2[hour], 0.015 * outsideAir);
    }

    [Fact]
    public void Sun_AtNight_IsNone()
    {
        WeatherSeries series = Sample.File("new-york-daily-2012-2013.csv", Sample.NewYork);
        Assert.Equal(0, series.At(Sample.Utc(2013, 1, 10, 2, Sample.NewYork)).SunWPerM2);
        Assert.True(series.At(Sample.Utc(2013, 1, 10, 12, Sample.NewYork)).SunWPerM2 > 50);
    }

    [Fact]
    public void Columns_InAnyOrder_AreFoundByName()
    {
        WeatherSeries one = Sample.Text("date,temp_max,temp_min,wind\n2013-01-01,5,-2,3\n2013-01-02,6,-1,4\n");
        WeatherSeries other = Sample.Text("wind,Temp_Min,date,note,temp_max\n3,-2,2013-01-01,x,5\n4,-1,2013-01-02,y,6\n");
        Assert.Equal(one.OutsideC, other.OutsideC);
        Assert.Equal(one.WindMPerS, other.WindMPerS);
    }

    [Fact]
    public void Wind_OfEachDay_HoldsForItsHours()
    {
        WeatherSeries series = Sample.Text("date,temp_max,temp_min,wind\n2013-01-01,5,-2,3\n2013-01-02,6,-1,4\n");
        Assert.Equal(3, series.WindMPerS[23]);
        Assert.Equal(4, series.WindMPerS[24]);
        Assert.Equal(4, series.WindMPerS[48]);
    }

    [Fact]
    public void MissingDays_WhenFew_AreBridgedAndReported()
    {
        WeatherSeries series = Sample.Text("date,temp_max,temp_min\n2012-02-28,4,0\n2012-03-01,8,2\n");
        Assert.Equal(
            [
                "highest temperature missing from 2012-02-29 00:00 until 2012-03-01 00:00: drawn straight between the days beside it.",
                "lowest temperature missing from 2012-02-29 00:00 until 2012-03-01 00:00: drawn straight between the days beside it.",
            ],
            series.Gaps.Select(gap => gap.Sentence));
        Assert.Equal(73, series.OutsideC.Count);
    }

    [Fact]
    public void MissingDays_WhenMany_MakeTheFileUnusable() =>
        Assert.Contains(
            "highest temperature missing from 2012-03-02 00:00 until 2012-03-09 00:00. Gaps up to 48 h",
            Sample.Faults("date,temp_max,temp_min\n2012-03-01,4,0\n2012-03-09,8,2\n"));

    [Fact]
    public void BadRows_OfAnyKind_AreAllToldWithLineColumnAndValue()
    {
        string faults = Sample.Faults(
            "date,temp_max,temp_min,wind\n2012-01-01,4,0,1\n2012-01-02,warm,0,1\n2012-01-03,4,-120,1\n2012-01-04,1,3,1\n2012-01-05,4,0,-2\n");
        Assert.Contains("made.csv, line 3, temp_max: \"warm\"; allowed is -90 to 60 °C.", faults);
        Assert.Contains("made.csv, line 4, temp_min: \"-120\"; allowed is -90 to 60 °C.", faults);
        Assert.Contains("made.csv, line 5, temp_min: \"3\"; allowed is at most temp_max (1 °C).", faults);
        Assert.Contains("made.csv, line 6, wind: \"-2\"; allowed is 0 to 100 m/s.", faults);
    }

    [Theory]
    [InlineData("date,temp_max,temp_min\n2012-01-32,4,0\n", "line 2, date: \"2012-01-32\"")]
    [InlineData("date,temp_max,temp_min\n2012-01-02,4,0\n2012-01-02,4,0\n", "line 3, date: \"2012-01-02\"; allowed is a date after the line before")]
    [InlineData("location,date,temp_max,temp_min\nOak,2012-01-01,4,0\nElm,2012-01-02,4,0\n", "line 3, location: \"Elm\"")]
    [InlineData("date,temp_max\n2012-01-01,4\n", "no column temp_min; there are date, temp_max; allowed is a first line that names temp_min too")]
    [InlineData("date,temp_max,temp_min\n", "no rows; allowed is one row or more")]
    [InlineData("", "no rows")]
    public void File_OfWrongShape_IsRefusedWithTheReason(string text, string reason) => Assert.Contains(reason, Sample.Faults(text));

    [Fact]
    public void PolarNight_WithoutSunrise_StillHasADay()
    {
        WeatherSeries series = Sample.Text(
            "date,temp_max,temp_min\n2012-12-20,-5,-15\n2012-12-21,-6,-14\n", new Place(78.2, 15.6, TimeSpan.FromHours(1)));
        Assert.All(series.SunWPerM2, value => Assert.Equal(0, value));
        Assert.InRange(series.OutsideC.Max(), -5.5, -5);
    }

    private static double At(WeatherSeries series, DateOnly date, TimeOnly clock) =>
        series.At(Sample.Utc(date.Year, date.Month, date.Day, clock.ToTimeSpan().TotalHours, Sample.Seattle)).OutsideC;
}
