using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Sky.Weather;

public class ChangedWeatherTests
{
    [Fact]
    public void Warmer_ByAKelvin_ChangesTheAirAndNothingElse()
    {
        WeatherSeries plain = Sample.File("new-york-daily-2012-2013.csv", Sample.NewYork);
        WeatherSeries warmer = plain.Warmer(1.25);
        Assert.Equal(plain.OutsideC.Select(t => Math.Round(100 * (t + 1.25)) / 100), warmer.OutsideC);
        Assert.Equal(plain.SunWPerM2, warmer.SunWPerM2);
        Assert.Equal(plain.WindMPerS, warmer.WindMPerS);
        Assert.Equal(plain.Humidity, warmer.Humidity);
        Assert.Equal((plain.CoversFrom, plain.CoversTo), (warmer.CoversFrom, warmer.CoversTo));
    }

    [Fact]
    public void Twice_AYear_RunsOnHourByHour()
    {
        WeatherSeries once = Sample.File("new-york-daily-2012-2013.csv", Sample.NewYork);
        WeatherSeries twice = once.Twice();
        int hours = once.OutsideC.Count;
        Assert.Equal(2 * hours, twice.OutsideC.Count);
        Assert.Equal(once.CoversFrom, twice.CoversFrom);
        Assert.Equal(once.CoversTo + (hours * 3_600_000L), twice.CoversTo);
        Assert.Equal(once.At(once.CoversFrom + 7_200_000), twice.At(once.CoversFrom + ((hours + 2) * 3_600_000L)));
    }

    [Fact]
    public void GoingRound_AfterItsEnd_BeginsAgainAtTheSameHourOfTheDay()
    {
        WeatherSeries plain = Sample.File("new-york-daily-2012-2013.csv", Sample.NewYork);
        WeatherSeries round = plain.GoingRound();
        const long day = 86_400_000;
        long days = (plain.CoversTo - plain.CoversFrom) / day;
        long soon = plain.CoversFrom + (2 * day) + 5_400_000;

        Assert.Equal(plain.At(plain.CoversTo), round.At(plain.CoversTo));
        Assert.Equal(plain.At(soon), round.At(soon));
        Assert.Equal(plain.At(soon), round.At(soon + (days * day)));
        Assert.Equal(plain.At(soon), round.At(soon + (7 * days * day)));
        Assert.Equal(plain.CoversTo, round.CoversTo);
        Assert.Equal(plain.Warmer(1).At(soon), round.Warmer(1).At(soon + (days * day)));
        Assert.Throws<ArgumentOutOfRangeException>(() => plain.At(soon + (days * day)));
        Assert.Throws<ArgumentOutOfRangeException>(() => round.At(plain.CoversFrom - 1));
    }
}
