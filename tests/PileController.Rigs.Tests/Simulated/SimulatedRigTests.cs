using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class SimulatedRigTests
{
    private readonly FakePlant _plant = new() { PumpMakesFlow = true };

    [Fact]
    public void Ctor_NoOutputsYet_PlantFeelsEverythingOff()
    {
        SimulatedRig rig = new(_plant, new RigSettings(), 30);
        rig.Advance(10);

        Assert.Equal(default, _plant.Last);
    }

    [Fact]
    public void Read_AlderBank_HasOneGoodReadingAFittedProbe()
    {
        SimulatedRig rig = new(_plant, new RigSettings(), 30);
        RigReadings readings = rig.Read(Ticks.At(0));

        Assert.Equal(ChannelTable.Count, readings.AsSpan().Length);
        foreach (ChannelInfo info in ChannelTable.All)
        {
            bool fitted = ProbeFit.AlderBank.Any(probe => probe.Channel == info.Channel);
            Assert.Equal(fitted ? ReadingQuality.Good : ReadingQuality.NotFitted, readings[info.Channel].Quality);
        }
    }

    [Fact]
    public void Advance_PumpOnAndValveOpening_MetersTheFlowThatPassed()
    {
        SimulatedRig rig = new(_plant, new RigSettings(), 30);
        rig.Apply(new Outputs(1, 1, 0, false));
        for (int tick = 0; tick < 60; tick++)
        {
            rig.Advance(10);
        }

        // 4 L/min, but for the 30 s the valve travels; the meter of this seed errs by its gain.
        double gain = ProbeErrors.GainOf(Channel.Flow, 1);
        double litres = 4 * (10 - 0.25) * gain;
        Assert.Equal(litres / 10, rig.Read(Ticks.At(60))[Channel.Flow].ValueOf(Channel.Flow), 1.0 / 64);
        Assert.Equal(1, rig.ValvePosition);
    }

    [Fact]
    public void Read_TwiceWithoutAdvancing_SaysTheSame()
    {
        SimulatedRig rig = new(_plant, new RigSettings(), 30);
        rig.Apply(new Outputs(0.7, 1, 0, false));
        rig.Advance(10);

        Assert.Equal(rig.Read(Ticks.At(1)).AsSpan(), rig.Read(Ticks.At(1)).AsSpan());
    }

    [Fact]
    public async Task ReadAsync_TicksApart_GivesTheBitsOfTheFastWay()
    {
        FakePlant otherPlant = new() { PumpMakesFlow = true };
        SimulatedRig fast = new(_plant, new RigSettings(), 30);
        await using SimulatedRig looped = new(otherPlant, new RigSettings(), 30);
        for (int tick = 0; tick < 50; tick++)
        {
            Outputs outputs = new(tick / 50.0, tick % 2, 0.5, tick % 3 == 0);
            RigReadings a = fast.Read(Ticks.At(tick));
            RigReadings b = await looped.ReadAsync(Ticks.At(tick), CancellationToken.None);
            Assert.Equal(a.AsSpan(), b.AsSpan());
            fast.Apply(outputs);
            await looped.ApplyAsync(outputs, CancellationToken.None);
            fast.Advance(Ticks.Seconds);
        }
    }

    [Fact]
    public async Task ReadAsync_AfterALongGap_LetsThePlantLiveItInBoundedSteps()
    {
        await using SimulatedRig rig = new(_plant, new RigSettings(), 30);
        await rig.ReadAsync(Ticks.AtSeconds(0), CancellationToken.None);
        await rig.ReadAsync(Ticks.AtSeconds(3605), CancellationToken.None);

        Assert.Equal(3605, _plant.Lived.Sum(step => step.Seconds), 9);
        Assert.All(_plant.Lived, step => Assert.InRange(step.Seconds, 0.001, 60));
    }

    [Theory]
    [InlineData(1.01, 0, 0, "PumpDuty")]
    [InlineData(0, -0.1, 0, "ValveOpening")]
    [InlineData(0, 0, double.NaN, "BlowerDuty")]
    public void Apply_NoShare_IsRefusedByName(double pump, double valve, double blower, string field)
    {
        SimulatedRig rig = new(_plant, new RigSettings(), 30);

        ArgumentException error = Assert.Throws<ArgumentException>(() => rig.Apply(new Outputs(pump, valve, blower, false)));
        Assert.Contains(field, error.Message, StringComparison.Ordinal);
        Assert.Equal(Outputs.Safe, rig.Outputs);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Advance_NoTime_IsRefused(double seconds) =>
        Assert.Throws<ArgumentException>(() => new SimulatedRig(_plant, new RigSettings(), 30).Advance(seconds));

    [Fact]
    public void Ctor_ChannelFittedTwice_IsRefusedByName()
    {
        RigSettings settings = new() { Probes = [new(Channel.Tank), new(Channel.Tank)] };

        ArgumentException error = Assert.Throws<ArgumentException>(() => new SimulatedRig(_plant, settings, 30));
        Assert.Contains("tank", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ctor_CalibrationOfASwitch_IsRefusedByName()
    {
        RigSettings settings = new() { Probes = [new(Channel.Leak, OffsetKelvin: 1)] };

        ArgumentException error = Assert.Throws<ArgumentException>(() => new SimulatedRig(_plant, settings, 30));
        Assert.Contains("leak", error.Message, StringComparison.Ordinal);
    }
}
