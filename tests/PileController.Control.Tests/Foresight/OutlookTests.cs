using PileController.Control.Foresight;
using PileController.Physics;

namespace PileController.Control.Tests.Foresight;

public sealed class OutlookTests
{
    private const long Start = 1_737_936_000_000; // 2025-01-27T00:00Z
    private static readonly ControlSettings Settings = new();

    [Fact]
    public void Fill_InWeatherThatRepeats_ForetellsTheNextDay()
    {
        WeatherMemory weather = Lived(Repeating, 20);
        double[] ahead = Filled(weather, null, 20 * 24);
        for (int k = 0; k < 48; k++)
        {
            Assert.InRange(ahead[k] - Repeating((20 * 24) + k + 0.5), -1, 1);
        }
    }

    [Fact]
    public void SigmaK_InWeatherThatRepeats_BecomesLessThanThePrior()
    {
        WeatherMemory weather = Lived(Repeating, 30);
        Assert.InRange(weather.SigmaK(24, false), 0, 0.7 * WeatherMemory.Fresh.SigmaK(24, false));
        Assert.Equal(WeatherMemory.Fresh.SigmaK(24, true), weather.SigmaK(24, true));
    }

    [Fact]
    public void SigmaK_InWeatherThatTurnsEveryOtherDay_BecomesMoreThanWhereItRepeats()
    {
        WeatherMemory weather = Lived(hour => Repeating(hour) + ((int)(hour / 48) % 2 == 0 ? 7 : -7), 40);
        Assert.True(weather.SigmaK(48, false) > 3 * Lived(Repeating, 40).SigmaK(48, false));
    }

    [Fact]
    public void SigmaK_Fresh_GrowsWithTheLead()
    {
        for (int lead = 1; lead < 72; lead++)
        {
            Assert.True(WeatherMemory.Fresh.SigmaK(lead + 1, false) >= WeatherMemory.Fresh.SigmaK(lead, false));
            Assert.True(WeatherMemory.Fresh.SigmaK(lead, true) <= WeatherMemory.Fresh.SigmaK(lead, false));
        }
    }

    [Fact]
    public void Fill_AfterAWarmHour_RevertsToTheMeanOfTheLastDays()
    {
        WeatherMemory weather = Lived(hour => hour < (20 * 24) - 12 ? 0 : 10, 20);
        double[] ahead = Filled(weather, null, 20 * 24, 240);

        Assert.InRange(ahead[0], 5, 14);
        Assert.InRange(ahead[239], -1, 4);
    }

    [Fact]
    public void WeeksC_AfterATurnInTheWeather_FollowsFarMoreSlowlyThanTheMeanOfTheDays()
    {
        WeatherLearned learned = Lived(hour => hour < 40 * 24 ? 10 : 0, 44).Learned;

        Assert.Null(WeatherLearned.Fresh.WeeksC);
        Assert.Equal(2, Lived(hour => hour < 1 ? -20 : 2, 5).Learned.WeeksC!.Value, 0.2);
        // Four days of one in sixteen, and of one in five: e^(-4/16) and e^(-4/5) of the ten kelvin are left.
        Assert.Equal(7.79, Assert.NotNull(learned.WeeksC), 0.1);
        Assert.Equal(4.49, learned.SlowC, 0.1);
    }

    [Fact]
    public void Fill_WhereAForecastCoversTheHours_FollowsItAndCorrectsWhatIsOffNow()
    {
        WeatherMemory weather = Lived(_ => 5, 5);
        Forecast forecast = new(Start + (5 * 24 * 3_600_000L), [.. Enumerable.Repeat(2.0, 48)], null, "a test");
        double[] ahead = Filled(weather, forecast, 5 * 24, 72);

        Assert.Equal(5, ahead[0], 1e-9);
        Assert.Equal(3.5, ahead[6], 1e-9);
        Assert.All(ahead[12..48], celsius => Assert.Equal(2, celsius, 1e-9));
        for (int k = 48; k < 72; k++)
        {
            Assert.True(Math.Abs(ahead[k] - ahead[k - 1]) < 1.2, $"a jump at {k}: {ahead[k - 1]} to {ahead[k]}");
        }
    }

    [Fact]
    public void Fill_WhereAForecastTellsTheSun_GainsItsShareAndElseWhatWasLearned()
    {
        HouseMemory house = HouseMemory.Fresh with
        {
            Learned = HouseLearned.Fresh with { SunFactor = 0.8, GainW = [.. Enumerable.Range(0, 24).Select(h => 10.0 * h)] },
        };
        Forecast forecast = new(Start, [1, 1], [100, 200], "a test");
        double[] outside = new double[6];
        double[] gain = new double[6];
        Outlook.Fill(Settings, WeatherMemory.Fresh, house, forecast, new Instant(Start, 0, 0), outside, gain);

        Assert.Equal([0.8 * 15 * 100, 0.8 * 15 * 200, 20, 30, 40, 50], gain);
    }

    [Fact]
    public void Fill_OverRandomWeather_StaysWithinReach()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            Random random = new(seed);
            double[] hours = [.. Enumerable.Range(0, 600).Select(_ => -15 + (30 * random.NextDouble()))];
            WeatherMemory weather = Lived(hour => hours[(int)hour % hours.Length], 15);
            Assert.All(Filled(weather, null, 15 * 24, 240), celsius => Assert.InRange(celsius, -30, 30));
        }
    }

    [Fact]
    public void Step_OverALongGap_BeginsTheDayAnew()
    {
        WeatherMemory weather = Lived(Repeating, 10);
        WeatherMemory after = WeatherMemory.Step(Settings, weather, 3, true, null, 10, At(20 * 24 * 3600));
        Assert.True(after.Learned.LastC.Length < 24);
        Assert.All(after.Learned.Issued, i => Assert.Equal(after.Hour, i.Hour));
    }

    [Fact]
    public void Step_WhenTheClockGoesBack_ForgetsTheHourOnly()
    {
        WeatherMemory weather = Lived(Repeating, 10);
        WeatherMemory after = WeatherMemory.Step(Settings, weather, 3, true, null, 10, At((9 * 24 * 3600) + 60));
        Assert.Same(weather.Learned, after.Learned);
    }

    private static double Repeating(double hour) => 3 + (5 * Portable.Cos(2 * Math.PI * (hour - 15) / 24));

    private static Instant At(long seconds) => new(Start + (seconds * 1000), seconds * 1000, 0);

    private static WeatherMemory Lived(Func<double, double> outsideC, int days)
    {
        WeatherMemory weather = WeatherMemory.Fresh;
        for (int at = 0; at <= days * 24 * 6; at++)
        {
            weather = WeatherMemory.Step(Settings, weather, outsideC(at / 6.0), true, null, 600, At(at * 600));
        }

        return weather;
    }

    private static double[] Filled(in WeatherMemory weather, Forecast? forecast, int hour, int hours = 72)
    {
        double[] outside = new double[hours];
        Outlook.Fill(Settings, weather, HouseMemory.Fresh, forecast, At((hour * 3600) + 1800), outside, new double[hours]);
        return outside;
    }
}
