using PileController.Control.Readings;

namespace PileController.Rigs.Tests.Ports;

/// <summary>What every switch owes.</summary>
public abstract class SwitchContract : PortContract
{
    private protected SwitchContract(IPortBench bench)
        : base(bench)
    {
    }

    protected override Channel Channel => Channel.Leak;

    protected override double Some => 0;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public async Task ReadAsync_Settled_IsWhatIsSo(double wet) => Assert.Equal(wet, await SaysAsync(wet));
}

public sealed class SimulatedSwitchTests() : SwitchContract(new SimulatedBench(Channel.Leak));

public sealed class SwitchLineTests() : SwitchContract(new InputBench(
    new(Channel.Leak) { Wiring = new() { Source = ProbeSource.Switch, Line = InputBench.Line, WellWhen = LineLevel.Low } },
    (bench, wet) => bench.Lines.Set(InputBench.Line, wet > 0),
    bench => bench.Lines.Broken.Add(InputBench.Line)));
