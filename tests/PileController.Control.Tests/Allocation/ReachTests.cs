using PileController.Control.Allocation;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Allocation;

public sealed class ReachTests
{
    private static readonly HeapEstimate Heap = new(60, 58, 55, 0.5, 0, 0, 0, true, true);

    [Fact]
    public void Of_WarmTurns_IsWhatCoilAndMostFlowCarry()
    {
        // 4 L/min carry 278 W/K; a coil of 80 W/K takes 80/358 of what 55 °C against 35 °C offers.
        double carried = 4 * 4170 / 60.0;

        Assert.Equal(carried * 80 / (80 + carried) * 20, Of(new ControlSettings()).WaterW, 1e-6);
    }

    [Fact]
    public void Of_TurnsColderThanTheWater_IsNothing() =>
        Assert.Equal(0, Reach.Of(new ControlSettings(), Sound.Readings, Heap with { TurnsCelsius = 20 }, 4).WaterW);

    [Fact]
    public void Of_NoCoilOrNoBlower_IsNothing()
    {
        Assert.Equal(0, Of(new ControlSettings { CoilWPerK = 0 }).WaterW);
        Assert.Equal(0, Of(new ControlSettings { BlowerFitted = false }).AirW);
    }

    [Fact]
    public void Of_NoReturnProbe_TakesTheHouseAndALittle() => Assert.Equal(
        Reach.Of(new ControlSettings(), Sound.Readings.With(Channel.Return, 9), Heap, 4).WaterW,
        Reach.Of(new ControlSettings(), Sound.Readings.Without(Channel.Return), Heap, 4).WaterW);

    private static Reach Of(ControlSettings settings) => Reach.Of(settings, Sound.Readings, Heap, 4);
}
