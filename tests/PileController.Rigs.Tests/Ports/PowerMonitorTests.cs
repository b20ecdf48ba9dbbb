using PileController.Control.Readings;

namespace PileController.Rigs.Tests.Ports;

/// <summary>What every power monitor owes.</summary>
public abstract class PowerMonitorContract : PortContract
{
    // Below this control takes a pump for silent.
    private const double SilentWatts = 0.5;

    private protected PowerMonitorContract(IPortBench bench)
        : base(bench)
    {
    }

    protected override Channel Channel => Channel.PumpPower;

    protected override double Some => 22;

    // 1 % (common practice, no source), a tenth of a watt of noise, and the grain.
    [Theory]
    [InlineData(5)]
    [InlineData(22)]
    [InlineData(30)]
    public async Task ReadAsync_LoadRuns_IsWithinAPercent(double watts) =>
        Assert.Equal(watts, await SaysAsync(watts), (0.01 * watts) + 0.1 + ChannelTable.Of(Channel.PumpPower).Quantum);

    [Fact]
    public async Task ReadAsync_LoadRests_IsSilent() => Assert.InRange(await SaysAsync(0), 0, SilentWatts - 0.1);
}

public sealed class SimulatedPowerMonitorTests() : PowerMonitorContract(new SimulatedBench(Channel.PumpPower));

public sealed class ShuntMonitorTests() : PowerMonitorContract(new InputBench(
    new(Channel.PumpPower) { Wiring = new() { Source = ProbeSource.Ina219, Bus = 1, Device = 0x40, ShuntOhms = 0.1 } },
    (bench, watts) => bench.Monitor.Carry(12.8, watts / 12.8, 0.1),
    bench => bench.Monitor.FailNext = int.MaxValue));
