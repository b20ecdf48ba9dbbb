using PileController.Control.Decisions;
using PileController.Control.Metering;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Metering;

public sealed class TotaliserTests
{
    private static readonly MeteredDraw Draw = new(1000, 50, 200, 3, false);

    [Fact]
    public void Add_OneTick_AddsEveryFigureOverItsSeconds()
    {
        RigReadings readings = Sound.Readings.With(Channel.PumpPower, 12).With(Channel.BlowerPower, 5);
        Totals totals = Totaliser.Add(new Totals(1, 2, 3, 4, 5, 6), new ControlSettings(), Draw, readings, default, 20);

        Assert.Equal(new Totals(20_001, 1002, 4003, 244, 105, 7), totals);
    }

    [Fact]
    public void Add_NoPowerMeters_ReckonsFromWhatWasTold()
    {
        RigReadings readings = Sound.Readings.Without(Channel.PumpPower, Channel.BlowerPower);
        Totals totals = Totaliser.Add(default, new ControlSettings(), Draw, readings, new Outputs(0.5, 1, 0.5, false), 8);

        Assert.Equal(22, totals.PumpJoules, 1e-9);
        Assert.Equal(18, totals.BlowerJoules, 1e-9);
    }

    [Theory]
    [InlineData(0.25, 0, 0)]
    [InlineData(0.25, 0.5, 2.5)]
    [InlineData(3, 0, 30)]
    public void Add_MeterNoiseAtRest_IsNoElectricity(double watts, double duty, double joules) => Assert.Equal(
        joules,
        Totaliser.Add(default, new ControlSettings(), Draw, Sound.Readings.With(Channel.PumpPower, watts), new Outputs(duty, 1, 0, false), 10).PumpJoules);

    [Fact]
    public void Add_HeatPutIn_TakesItOffTheTotal() => Assert.Equal(
        -500, Totaliser.Add(default, new ControlSettings(), Draw with { WaterWatts = -100 }, Sound.Readings, default, 5).WaterJoules);
}
