using PileController.Control.Allocation;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Control.Regulation;
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
        Assert.Equal(0, Reach.Of(new ControlSettings(), Sound.Readings, Heap with { TurnsCelsius = 20 }, 4, default, 1).WaterW);

    [Fact]
    public void Of_NoCoilOrNoBlower_IsNothing()
    {
        Assert.Equal(0, Of(new ControlSettings { CoilWPerK = 0 }).WaterW);
        Assert.Equal(0, Of(new ControlSettings { BlowerFitted = false }).AirW);
    }

    [Fact]
    public void Of_NoReturnProbe_TakesTheHouseAndALittle() => Assert.Equal(
        Reach.Of(new ControlSettings(), Sound.Readings.With(Channel.Return, 9), Heap, 4, default, 1).WaterW,
        Reach.Of(new ControlSettings(), Sound.Readings.Without(Channel.Return), Heap, 4, default, 1).WaterW);

    [Fact]
    public void Of_FullBatteryOrShort_ComfortGoesBrisklyOrGently()
    {
        ControlSettings ducts = new() { DuctWPerK = 20 };
        RegulatorMemory running = new() { PumpDuty = 0.6, WaterYieldWatts = 300 };
        Reach brisk = Reach.Of(ducts, Sound.Readings, Heap, 4, running, 1);
        Reach gentle = Reach.Of(ducts, Sound.Readings, Heap, 4, running, 0);

        // 3.05 L/min at full duty; so far 300 W to each.
        Assert.Equal(300 * 3.05 * 0.5, brisk.GentleWaterW, 1e-9);
        Assert.Equal(300 * 3.05 * 0.35, gentle.GentleWaterW, 1e-9);
        Assert.Equal(0.5 * brisk.AirW, brisk.GentleAirW, 1e-9);
        Assert.Equal(0.35 * gentle.AirW, gentle.GentleAirW, 1e-9);
    }

    [Fact]
    public void Of_PumpThatStandsOrKnowsNoPart_ComfortMayHaveAllWaterCarries()
    {
        RegulatorMemory running = new() { PumpDuty = 0.6, WaterYieldWatts = 300 };
        Reach stands = Reach.Of(new ControlSettings(), Sound.Readings, Heap, 4, running with { PumpDuty = 0 }, 0);
        Reach relay = Reach.Of(new ControlSettings { Drive = PumpDrive.OnOff }, Sound.Readings, Heap, 4, running, 0);

        Assert.Equal(stands.WaterW, stands.GentleWaterW);
        Assert.Equal(relay.WaterW, relay.GentleWaterW);
    }

    [Fact]
    public void Of_AirDrawnThroughTheHeap_LeavesNoneToComfort() =>
        Assert.Equal(0, Reach.Of(new ControlSettings { DuctWPerK = 0 }, Sound.Readings, Heap, 4, default, 1).GentleAirW);

    private static Reach Of(ControlSettings settings) => Reach.Of(settings, Sound.Readings, Heap, 4, default, 1);
}
