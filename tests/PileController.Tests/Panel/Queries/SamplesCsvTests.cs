using System.Globalization;
using PileController.Panel.Queries;
using PileController.Records;
using PileController.Settings;

namespace PileController.Tests.Panel.Queries;

public class SamplesCsvTests
{
    [Theory]
    [InlineData("2026-03-08T06:30:00Z", "2026-03-08T01:30:00-05:00", "2026-03-08T03:30:00-04:00")]
    [InlineData("2026-11-01T05:30:00Z", "2026-11-01T01:30:00-04:00", "2026-11-01T01:30:00-05:00")]
    public void Write_AcrossAChangeOfTheClocks_LabelsEachRowByTheRuleOfItsTime(string begins, string first, string second)
    {
        long utc = DateTimeOffset.Parse(begins, CultureInfo.InvariantCulture).ToUnixTimeMilliseconds();
        SeriesPoint[] points = [new(utc, 1, 1, 1, 1), new(utc + 3_600_000, 2, 2, 2, 1)];

        string text = SamplesCsv.Write([("house", "°C", points)], new Site { TimeZone = "America/New_York" }.OffsetMinutesAt);

        Assert.Equal([first, second], text.Split("\r\n")[1..3].Select(line => line.Split(',')[0]));
    }
}
