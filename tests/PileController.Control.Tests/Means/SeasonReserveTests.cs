using PileController.Control.Means;

namespace PileController.Control.Tests.Means;

public sealed class SeasonReserveTests
{
    private const double Mild = 8;

    private static readonly ControlSettings North = new() { ComfortReserveKelvin = 4, MidwinterReserveKelvin = 18 };
    private static readonly ControlSettings South = North with { LatitudeDegrees = -38 };

    [Theory]
    [InlineData("2025-11-15", 4)]
    [InlineData("2025-12-20", 4)]
    [InlineData("2026-01-08", 18)]
    [InlineData("2026-02-02", 18)]
    [InlineData("2026-03-01", 4)]
    [InlineData("2026-07-15", 4)]
    public void Kelvin_InTheNorth_StandsHighInTheColdestWeeks(string day, double expected) =>
        Assert.Equal(expected, SeasonReserve.Kelvin(North, At(day), Mild), 1e-9);

    [Theory]
    [InlineData("2026-07-20", 18)]
    [InlineData("2026-01-15", 4)]
    public void Kelvin_InTheSouth_TheYearIsTurned(string day, double expected) =>
        Assert.Equal(expected, SeasonReserve.Kelvin(South, At(day), Mild), 1e-9);

    [Fact]
    public void Kelvin_FromDayToDay_NeverLeaps()
    {
        for (int day = 0; day < 730; day++)
        {
            double today = SeasonReserve.Kelvin(North, At("2025-01-01", day), Mild);
            double tomorrow = SeasonReserve.Kelvin(North, At("2025-01-01", day + 1), Mild);
            Assert.True(Math.Abs(tomorrow - today) <= 4.5, $"day {day}: {today} K, then {tomorrow} K");
            Assert.InRange(today, 4, 18);
        }
    }

    [Fact]
    public void Kelvin_MidwinterSetBelowTheRest_IsTheRestAllYear() =>
        Assert.Equal(4, SeasonReserve.Kelvin(North with { MidwinterReserveKelvin = 0 }, At("2026-01-15"), Mild));

    [Fact]
    public void Kelvin_HouseThatLosesMuchForItsHeap_KeepsAsManyColdHours()
    {
        ControlSettings leaky = North with { HouseLossWPerK = 1.5 * North.HouseLossWPerK };
        ControlSettings small = North with { HeapHeatCapacityJPerK = 0.5 * North.HeapHeatCapacityJPerK };
        ControlSettings tight = North with { HouseLossWPerK = 0.5 * North.HouseLossWPerK };

        Assert.Equal(6, SeasonReserve.Kelvin(leaky, At("2025-11-15"), Mild), 1e-9);
        Assert.Equal(8, SeasonReserve.Kelvin(small, At("2025-11-15"), Mild), 1e-9);
        Assert.Equal(18, SeasonReserve.Kelvin(small with { HouseMinimumC = 5 }, At("2025-11-15"), -5), 1e-9);
        Assert.Equal(4, SeasonReserve.Kelvin(tight, At("2025-11-15"), Mild), 1e-9);
        Assert.Equal(18, SeasonReserve.Kelvin(leaky, At("2026-01-15"), Mild), 1e-9);
        Assert.Equal(0, SeasonReserve.Kelvin(leaky with { ComfortReserveKelvin = 0 }, At("2025-11-15"), Mild));
    }

    [Theory]
    [InlineData(null, 4)]
    [InlineData(8.0, 4)]
    [InlineData(5.0, 4)]
    [InlineData(2.0, 7.6)]
    [InlineData(-20.0, 13.6)]
    public void Kelvin_WinterThatHasComeEarly_KeepsMore(double? lastWeeksC, double expected) =>
        Assert.Equal(expected, SeasonReserve.Kelvin(North with { HouseMinimumC = 5 }, At("2025-11-15"), lastWeeksC), 1e-9);

    private static Instant At(string day, int later = 0) => new(
        new DateTimeOffset(DateTime.Parse(day, System.Globalization.CultureInfo.InvariantCulture), TimeSpan.Zero).AddDays(later).ToUnixTimeMilliseconds(), 0, 0);
}
