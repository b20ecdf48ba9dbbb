using PileController.Settings;

namespace PileController.Tests.Settings;

public class SiteTests
{
    [Theory]
    [InlineData("+00:00", 0)]
    [InlineData("-07:00", -420)]
    [InlineData("+05:45", 345)]
    [InlineData("UTC", 0)]
    public void Site_WithAZone_TellsItsOffset(string zone, int minutes) =>
        Assert.Equal(minutes, new Site { TimeZone = zone }.OffsetMinutesAt(0));

    [Fact]
    public void Site_WithSummerTime_TellsTheOffsetOfTheMoment()
    {
        // Time zone data of the system, 2024: UTC-5 in winter, UTC-4 in summer.
        Site site = new() { TimeZone = "America/New_York" };
        Assert.Equal(-300, site.OffsetMinutesAt(new DateTimeOffset(2024, 1, 15, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds()));
        Assert.Equal(-240, site.OffsetMinutesAt(new DateTimeOffset(2024, 7, 15, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds()));
    }
}
