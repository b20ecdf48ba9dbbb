using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class DayPowerTests
{
    private static readonly DayPower Supply = new(200, 1200, 2);

    [Fact]
    public void SunnyHours_OfALoad_AreTheHarvestOverIt()
    {
        // 200 W × 2 h × 0.75 = 300 Wh.
        Assert.Equal(15, Supply.SunnyHours(20), 1e-12);
        Assert.Equal(24, Supply.SunnyHours(5));
    }

    [Fact]
    public void DarkHours_OfALoad_AreHalfTheBatteryOverIt() => Assert.Equal(30, Supply.DarkHours(20), 1e-12);

    [Fact]
    public void Hours_WithNeitherPanelNorBattery_AreNone()
    {
        DayPower none = new(0, 0, 2);
        Assert.Equal(0, none.SunnyHours(20));
        Assert.Equal(0, none.DarkHours(20));
    }
}
