using PileController.Control.Means;

namespace PileController.Control.Tests.Means;

public sealed class WantRuleTests
{
    private static readonly ControlSettings Settings = new();

    [Theory]
    [InlineData(0, 10)]
    [InlineData(5.99, 10)]
    [InlineData(6, 15)]
    [InlineData(7, 15)]
    [InlineData(17.99, 15)]
    [InlineData(18, 10)]
    [InlineData(23.99, 10)]
    public void SetPointC_ByTheHour_IsDayNightAndPreWarm(double hour, double expected) =>
        Assert.Equal(expected, WantRule.SetPointC(Settings, hour));

    [Fact]
    public void Of_HouseAtItsSetPoint_WantsItsShareOfTheLoss() =>
        Assert.Equal(0.8 * 220 * (15 - -5), WantRule.Of(Settings, 15, -5, 12).ComfortW, 1e-9);

    [Fact]
    public void Of_HouseBelow_WantsMoreByFourTimesItsLossForEachKelvin() =>
        Assert.Equal(4 * 220, WantRule.Of(Settings, 14, -5, 12).ComfortW - WantRule.Of(Settings, 15, -5, 12).ComfortW, 1e-9);

    [Fact]
    public void FrostWatts_HouseAtItsMinimum_WantsItsLossAndIsPulledHarderThanForComfort()
    {
        double at = WantRule.FrostWatts(Settings, 5, -10, 0);

        Assert.Equal(0.8 * 220 * (5 - -10), at, 1e-9);
        Assert.Equal(8 * 220 * 0.5, WantRule.FrostWatts(Settings, 4.5, -10, 0) - at, 1e-9);
    }

    // What meets 0.8 of the loss at 15 K is given up within 0.8 × 15 / 30 of a kelvin.
    [Theory]
    [InlineData(0.2, 0.5)]
    [InlineData(0.4, 0)]
    [InlineData(3, 0)]
    public void FrostWatts_HouseAboveItsMinimum_GivesWayWithinTenthsOfAKelvin(double aboveKelvin, double share) => Assert.Equal(
        share * WantRule.FrostWatts(Settings, 5, -10, 0), WantRule.FrostWatts(Settings, 5 + aboveKelvin, -10, 0), 1e-9);

    [Fact]
    public void Of_WarmHouse_WantsNothing() => Assert.Equal(0, WantRule.Of(Settings, 25, -5, 12).ComfortW);

    [Fact]
    public void Of_WarmerOutside_NeverWantsNegativeHeat() => Assert.Equal(0, WantRule.Of(Settings, 20, 30, 12).ComfortW);

    [Theory]
    [InlineData(-20, -10)]
    [InlineData(4, -5)]
    [InlineData(12, 3)]
    [InlineData(30, 20)]
    public void Of_AnyHouse_FrostIsNeverMoreThanComfort(double house, double outside)
    {
        HouseWant want = WantRule.Of(Settings, house, outside, 3);

        Assert.True(want.FrostW <= want.ComfortW);
        Assert.Equal(WantRule.FrostWatts(Settings, house, outside), want.FrostW);
    }

    [Fact]
    public void Of_HeatToBank_WantsAsForAHigherSetPointAndSaysTheOldOne()
    {
        HouseWant banked = WantRule.Of(Settings, 14, -5, 12, 3);

        Assert.Equal(WantRule.Of(Settings with { HouseDayC = 18 }, 14, -5, 12).ComfortW, banked.ComfortW);
        Assert.Equal(15, banked.SetPointC);
        Assert.Equal(WantRule.Of(Settings, 14, -5, 12).FrostW, banked.FrostW);
    }
}
