using PileController.Control.Foresight;
using PileController.Forecasts;

namespace PileController.Tests.Forecasts;

public class ForecastTextTests
{
    private const long From = 1_769_576_400_000; // 2026-01-28T05:00Z

    [Theory]
    [InlineData("utc,outsideC,sunWPerM2\n2026-01-28T05:00:00Z,1.5,0\r\n2026-01-28T06:00:00Z,-2,30\n")]
    [InlineData("{\"fromUtc\":\"2026-01-28T05:00:00Z\",\"outsideC\":[1.5,-2],\"sunWPerM2\":[0,30]}")]
    public void TryRead_CsvAndJson_SayTheSame(string text)
    {
        Assert.True(ForecastText.TryRead(text, "file", out ForecastSeries? series, out _));
        Assert.Equal((From, "file"), (series.FromUtcMilliseconds, series.Source));
        Assert.Equal([1.5, -2], series.OutsideC);
        Assert.Equal([0, 30], series.SunWPerM2!);
    }

    [Theory]
    [InlineData("utc,outsideC\n2026-01-28T05:00:00Z,1.5\n")]
    [InlineData("{\"fromUtc\":\"2026-01-28T05:00:00Z\",\"outsideC\":[1.5],\"sunWPerM2\":null}")]
    [InlineData("{\"fromUtc\":\"2026-01-28T05:00:00Z\",\"outsideC\":[1.5]}")]
    public void TryRead_WithoutTheSun_HasNone(string text)
    {
        Assert.True(ForecastText.TryRead(text, "file", out ForecastSeries? series, out _));
        Assert.Null(series.SunWPerM2);
    }

    [Theory]
    [InlineData("", "line 1 is \"\"; allowed is the header utc,outsideC,sunWPerM2 or utc,outsideC.")]
    [InlineData("utc,outsideC", "it has 0 rows; allowed are 1 to 20000.")]
    [InlineData("utc,outsideC\n2026-01-28T05:00:00Z,warm", "line 2, outsideC is \"warm\"; allowed is a number.")]
    [InlineData("utc,outsideC\n2026-01-28T05:00:00Z", "line 2 is \"2026-01-28T05:00:00Z\"; allowed is 2 cells.")]
    [InlineData("utc,outsideC\n2026-01-28T05:30:00Z,1", "line 2, utc is \"2026-01-28T05:30:00Z\"; allowed is a whole hour in UTC such as 2026-01-28T05:00:00Z.")]
    [InlineData("utc,outsideC\n2026-01-28T05:00:00Z,1\n2026-01-28T07:00:00Z,1", "line 3, utc is 2026-01-28T07:00:00Z; allowed is the hour after the one before.")]
    [InlineData("{", "body is text that is no JSON; allowed is a JSON object with fromUtc, outsideC, sunWPerM2, source.")]
    [InlineData("{\"outsideC\":[1]}", "fromUtc is missing; allowed is a whole hour in UTC such as 2026-01-28T05:00:00Z.")]
    [InlineData("{\"fromUtc\":\"2026-01-28T05:00:00Z\"}", "outsideC is missing; allowed is a list of numbers.")]
    [InlineData("{\"fromUtc\":\"2026-01-28T05:00:00Z\",\"outsideC\":[1,\"x\"]}", "outsideC[1] is \"x\"; allowed is a number.")]
    [InlineData("{\"fromUtc\":\"2026-01-28T05:00:00\",\"outsideC\":[1]}", "fromUtc is \"2026-01-28T05:00:00\"; allowed is a whole hour in UTC such as 2026-01-28T05:00:00Z.")]
    [InlineData("{\"rain\":1}", "rain is a field nobody knows; allowed is fromUtc, outsideC, sunWPerM2, source.")]
    public void TryRead_OfAWrongText_SaysWhereWhatAndWhatIsAllowed(string text, string expected)
    {
        Assert.False(ForecastText.TryRead(text, "file", out _, out string? fault));
        Assert.Equal(expected, fault);
    }

    [Fact]
    public void At_InALongSeries_BeginsWithTheHourAtHandAndHasAtMostTenDays()
    {
        ForecastSeries series = new(From, [.. Enumerable.Range(0, 500).Select(i => (double)i)], null, "file");
        Forecast forecast = series.At(From + (100 * 3_600_000L) + 1)!;

        Assert.Equal((From + (100 * 3_600_000L), 240, 100.0), (forecast.FromUtcMilliseconds, forecast.OutsideC.Length, forecast.OutsideC[0]));
        Assert.Equal(From, series.At(0)!.FromUtcMilliseconds);
        Assert.Null(series.At(From + (500 * 3_600_000L)));
    }
}
