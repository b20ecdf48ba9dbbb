using PileController.Settings;

namespace PileController.Tests.Settings;

public class RecordSettingsTests
{
    [Theory]
    [InlineData(60, 10, 518_400)]
    [InlineData(1, 60, 1440)]
    [InlineData(1, 7, 12_343)]
    public void Ticks_OfSomeDays_CoverThem(double days, double tickSeconds, long ticks) =>
        Assert.Equal(ticks, RecordSettings.Ticks(days, tickSeconds));
}
