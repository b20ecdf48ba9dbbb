using CsCheck;
using PileController.Rigs.Hardware.Loads;

namespace PileController.Rigs.Tests.Hardware.Loads;

public class SignalMapTests
{
    [Theory]
    [InlineData(0, false, 0)]
    [InlineData(0, true, 1)]
    [InlineData(1, false, 0.9)]
    [InlineData(1, true, 0.1)]
    [InlineData(0.5, false, 0.55)]
    [InlineData(0.5, true, 0.45)]
    public void Of_Duty_IsWithinLeastAndMost(double duty, bool inverted, double signal) =>
        Assert.Equal(signal, new SignalMap(0.2, 0.9, inverted).Of(duty), 12);

    [Fact]
    public void Of_TheLeastDutyAboveNothing_IsTheThreshold() => Assert.Equal(0.2, new SignalMap(0.2, 0.9, false).Of(1e-9), 6);

    [Fact]
    public void Of_MoreDuty_IsNeverLessAwayFromStanding() =>
        Gen.Select(Gen.Double[0, 0.9], Gen.Double[0.01, 0.1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool).Sample((least, span, one, other, inverted) =>
        {
            SignalMap map = new(least, least + span, inverted);
            double low = Math.Abs(map.Of(Math.Min(one, other)) - map.Standing);
            double high = Math.Abs(map.Of(Math.Max(one, other)) - map.Standing);
            Assert.True(low <= high + 1e-12);
            Assert.InRange(map.Of(one), 0, 1);
        });

    [Theory]
    [InlineData(0.5, 0.5)]
    [InlineData(-0.1, 1)]
    [InlineData(0, 1.1)]
    [InlineData(double.NaN, 1)]
    public void Ctor_BoundsThatAreNone_AreRefusedByName(double least, double most) =>
        Assert.Contains("Least", Assert.Throws<ArgumentException>(() => new SignalMap(least, most, false)).Message, StringComparison.Ordinal);
}
