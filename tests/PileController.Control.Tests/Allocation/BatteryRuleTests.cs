using PileController.Control.Allocation;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Allocation;

public sealed class BatteryRuleTests
{
    // The blower is held off below 11.6 V; a reading is told in sixty-fourths of a volt.
    [Theory]
    [InlineData(11.75, 0, 0, 0)]
    [InlineData(11.84375, 0, 0.4375, 0)]
    [InlineData(12.046875, 0.48958333333333, 1, 0.1171875)]
    [InlineData(12.203125, 1, 1, 0.5078125)]
    [InlineData(12.5, 1, 1, 1)]
    public void Of_BatteryRunningDown_LessensFirstTheHasteThenTheWaterThenTheAir(double volts, double comfort, double air, double briskness)
    {
        BatteryLeave leave = BatteryRule.Of(new ControlSettings(), Sound.Readings.With(Channel.Battery, volts));

        Assert.Equal(comfort, leave.ComfortShare, 1e-9);
        Assert.Equal(air, leave.AirShare, 1e-9);
        Assert.Equal(briskness, leave.Briskness, 1e-9);
    }

    [Theory]
    [InlineData(11.609375, 0)]
    [InlineData(11.671875, 0.51875)]
    [InlineData(11.734375, 1)]
    public void Of_BatteryNearlyLow_EasesTheBlowerAgainstFrost(double volts, double share) => Assert.Equal(
        share, BatteryRule.Of(new ControlSettings(), Sound.Readings.With(Channel.Battery, volts)).FrostAirShare, 1e-9);

    [Fact]
    public void Of_NoBatteryRead_LeavesAll() =>
        Assert.Equal(BatteryLeave.All, BatteryRule.Of(new ControlSettings(), Sound.Readings.Without(Channel.Battery)));
}
