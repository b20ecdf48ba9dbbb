using CsCheck;
using PileController.Rigs.Hardware.Loads;

namespace PileController.Rigs.Tests.Hardware.Loads;

public class SlowDutyTests
{
    [Fact]
    public void IsOn_AnyDutyAnyPeriod_IsOnForItsShareInWholeSeconds() =>
        Gen.Select(Gen.Double[0, 1], Gen.Int[10, 40], Gen.Int[0, 1000]).Sample((duty, period, from) =>
        {
            SlowDuty slow = new(period);
            int on = Enumerable.Range(from * period, period).Count(second => slow.IsOn(duty, second));
            Assert.InRange(on, (duty * period) - 0.5, (duty * period) + 0.5);
        });

    [Fact]
    public void IsOn_OnePeriod_SwitchesOnOnceAndOffOnce()
    {
        SlowDuty slow = new(20);
        string period = string.Concat(Enumerable.Range(40, 20).Select(second => slow.IsOn(0.3, second) ? '1' : '0'));

        Assert.Equal("11111100000000000000", period);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    public void IsOn_AllOrNothing_NeverSwitches(double duty, bool expected)
    {
        SlowDuty slow = new(20);

        Assert.All(Enumerable.Range(0, 60), second => Assert.Equal(expected, slow.IsOn(duty, second)));
    }

    [Fact]
    public void IsOn_WithoutPeriod_HoldsBetweenItsThresholds()
    {
        SlowDuty slow = new(0);
        double[] duties = [0.4, 0.49, 0.5, 0.4, 0.25, 0.24, 0.4, 1, 0];

        Assert.Equal(
            [false, false, true, true, true, false, false, true, false], duties.Select(duty => slow.IsOn(duty, 0)));
    }

    [Theory]
    [InlineData(5)]
    [InlineData(41)]
    [InlineData(12.5)]
    [InlineData(-20)]
    [InlineData(double.NaN)]
    public void Ctor_OtherPeriod_IsRefusedByName(double seconds) =>
        Assert.Contains(
            "DutyPeriodSeconds", Assert.Throws<ArgumentException>(() => new SlowDuty(seconds)).Message, StringComparison.Ordinal);
}
