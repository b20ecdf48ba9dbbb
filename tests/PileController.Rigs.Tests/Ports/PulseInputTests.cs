using PileController.Control.Readings;
using PileController.Rigs.Tests.Hardware.Lines;

namespace PileController.Rigs.Tests.Ports;

/// <summary>What every flow meter owes.</summary>
public abstract class PulseInputContract : PortContract
{
    private protected PulseInputContract(IPortBench bench)
        : base(bench)
    {
    }

    protected override Channel Channel => Channel.Flow;

    protected override double Some => 4;

    // Class 2 near its rated flow, 2 % (SEN-051: EN 1434-1 as quoted in a meter's technical description), and the grain.
    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(8)]
    public async Task ReadAsync_WaterRuns_IsWithinTheMetersClass(double litresPerMinute) =>
        Assert.Equal(litresPerMinute, await SaysAsync(litresPerMinute), (0.02 * litresPerMinute) + ChannelTable.Of(Channel.Flow).Quantum);

    [Fact]
    public async Task ReadAsync_WaterStands_IsExactlyNought() => Assert.Equal(0, await SaysAsync(0));
}

public sealed class SimulatedFlowMeterTests() : PulseInputContract(new SimulatedBench(Channel.Flow));

public sealed class PulseLineTests() : PulseInputContract(new InputBench(
    new(Channel.Flow) { Wiring = new() { Source = ProbeSource.Pulses, Line = InputBench.Line } },
    (bench, litresPerMinute) => new FakeWheel(bench.Lines, InputBench.Line, bench.Time).Turn(10, litresPerMinute * 450 / 60),
    bench =>
    {
        bench.Lines.Broken.Add(InputBench.Line);
        bench.Time.Advance(TimeSpan.FromSeconds(1));
    }));
