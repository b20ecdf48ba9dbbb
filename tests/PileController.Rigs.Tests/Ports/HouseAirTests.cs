using PileController.Control.Readings;
using PileController.Rigs.Tests.Hardware.I2c;

namespace PileController.Rigs.Tests.Ports;

/// <summary>What every humidity probe owes.</summary>
public abstract class HumidityContract : PortContract
{
    private protected HumidityContract(IPortBench bench)
        : base(bench)
    {
    }

    protected override Channel Channel => Channel.Humidity;

    protected override double Some => 81.25;

    // SHT4x: 2 % (data sheet, from memory), and the grain.
    [Theory]
    [InlineData(10)]
    [InlineData(56.5)]
    [InlineData(100)]
    public async Task ReadAsync_Settled_IsWithinTwoPercent(double percent) =>
        Assert.Equal(percent, await SaysAsync(percent), 2 + ChannelTable.Of(Channel.Humidity).Quantum);
}

/// <summary>What every carbon dioxide probe owes.</summary>
public abstract class CarbonDioxideContract : PortContract
{
    private protected CarbonDioxideContract(IPortBench bench)
        : base(bench)
    {
    }

    protected override Channel Channel => Channel.CarbonDioxide;

    protected override double Some => 700;

    // 40 ppm and 5 % from 400 to 5,000 ppm (SCD4x data sheet, April 2021), and the grain.
    [Theory]
    [InlineData(420)]
    [InlineData(1_500)]
    [InlineData(5_000)]
    public async Task ReadAsync_Settled_IsWithinItsClass(double ppm) => Assert.Equal(ppm, await SaysAsync(ppm), 40 + (0.05 * ppm) + 1);
}

public sealed class SimulatedHumidityTests() : HumidityContract(new SimulatedBench(Channel.Humidity));

public sealed class AirProbeHumidityTests() : HumidityContract(new InputBench(
    new(Channel.Humidity) { Wiring = new() { Source = ProbeSource.Sht4x, Bus = 1, Device = 0x44 } },
    (bench, percent) => bench.Air.Bytes = AirChip.Of(11.5, percent),
    bench => bench.Air.FailNext = int.MaxValue));

public sealed class SimulatedCarbonDioxideTests() : CarbonDioxideContract(new SimulatedBench(Channel.CarbonDioxide));

public sealed class CarbonDioxideProbeTests() : CarbonDioxideContract(new InputBench(
    new(Channel.CarbonDioxide) { Wiring = new() { Source = ProbeSource.Scd4x, Bus = 1, Device = 0x62 } },
    (bench, ppm) =>
    {
        bench.Gas.Ppm = (ushort)ppm;
        bench.Time.Advance(TimeSpan.FromSeconds(5));
    },
    bench => bench.Gas.FailNext = int.MaxValue));
