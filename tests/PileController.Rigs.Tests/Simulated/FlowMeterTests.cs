using CsCheck;
using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class FlowMeterTests
{
    [Fact]
    public void Count_AnyHistoryOfLitres_LosesAndFindsNoPulse() =>
        Gen.Select(Gen.Int[0, 4096].Array[1, 400], Gen.Int[1, 2000]).Sample((kilolets, pulsesPerLitre) =>
        {
            // Litres in 1/1024 are exact in binary, so the whole sum can be made in integers.
            FlowMeter meter = new(pulsesPerLitre, 1);
            long pulses = 0;
            foreach (int part in kilolets)
            {
                meter.Count(part / 1024.0, 10);
                pulses += meter.Window.Pulses;
                meter.Look();
            }

            long total = kilolets.Sum(part => (long)part) * pulsesPerLitre;
            Assert.Equal(total / 1024, pulses);
            Assert.Equal(total % 1024 / 1024.0, meter.Window.Remainder);
        });

    [Fact]
    public void Look_OneGallonAMinute_CountsThePulsesOfTheReference()
    {
        // SEN-050 (from memory): 450 pulses/L give 28.39 Hz at 1 US gal/min.
        FlowMeter meter = new(450, 1);
        meter.Count(3.785411784 * 1000 / 60, 1000);

        Assert.Equal(28.39, meter.Window.Pulses / meter.Window.Seconds, 0.005);
        Assert.Equal(3.785411784, meter.Look().ValueOf(Channel.Flow), 1.0 / 128);
    }

    [Fact]
    public void Look_WheelThatRunsFast_ReadsHighByAsMuch()
    {
        FlowMeter meter = new(450, 1.02);
        meter.Count(4, 60);

        Assert.Equal(4.08, meter.Look().ValueOf(Channel.Flow), 1.0 / 64);
    }

    [Fact]
    public void Look_Twice_SaysTheSame()
    {
        FlowMeter meter = new(450, 1);
        meter.Count(0.5, 10);

        Assert.Equal(meter.Look(), meter.Look());
    }

    [Fact]
    public void Count_SeveralTimesBetweenLooks_AddsUp()
    {
        FlowMeter meter = new(100, 1);
        meter.Count(1, 10);
        meter.Count(3, 30);

        Assert.Equal(400, meter.Window.Pulses);
        Assert.Equal(6, meter.Look().ValueOf(Channel.Flow));
    }

    [Fact]
    public void Look_BeforeAnyWater_IsZero() => Assert.Equal(0, new FlowMeter(450, 1).Look().Quanta);

    [Fact]
    public void Count_SmallFlow_ShowsWholePulsesOnly()
    {
        // A third of a pulse a tick: two ticks of nothing, then one pulse.
        FlowMeter meter = new(1, 1);
        List<long> pulses = [];
        for (int tick = 0; tick < 6; tick++)
        {
            meter.Count(0.34, 10);
            pulses.Add(meter.Window.Pulses);
            meter.Look();
        }

        Assert.Equal([0, 0, 1, 0, 0, 1], pulses);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-450)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Ctor_NoPulses_IsRefusedByName(double pulsesPerLitre) =>
        Assert.Contains(
            "PulsesPerLitre", Assert.Throws<ArgumentException>(() => new FlowMeter(pulsesPerLitre, 1)).Message, StringComparison.Ordinal);
}
