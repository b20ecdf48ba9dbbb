using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;
using PileController.Rigs.Tests.Simulated;

namespace PileController.Rigs.Tests.Faults;

public class FaultyRigContractTests : RigContract
{
    private readonly FakePlant _plant = new() { [Channel.House] = HouseCelsius };
    private readonly FaultBoard _faults = new();
    private Func<Outputs> _told = () => Outputs.Safe;

    protected override bool AllIsOff => _told() == Outputs.Safe;

    protected override IRig Make()
    {
        RigSettings settings = new() { Probes = [new(Channel.House), new(Channel.Tank), new(Channel.Supply)] };
        SimulatedRig inner = new(_plant, settings, 30);
        _told = () => inner.Outputs;
        return new FaultyRig(inner, _faults);
    }

    protected override void BreakTank() => _faults.Add(new Fault(FaultKind.Open, Channel.Tank));
}
