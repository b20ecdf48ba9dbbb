using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class SimulatedRigContractTests : RigContract
{
    private readonly FakePlant _plant = new() { [Channel.House] = HouseCelsius };
    private readonly FaultBoard _faults = new();
    private Func<Outputs> _told = () => Outputs.Safe;

    protected override bool AllIsOff => _told() == Outputs.Safe;

    protected override IRig Make()
    {
        RigSettings settings = new() { Probes = [new(Channel.House), new(Channel.Tank), new(Channel.Supply)] };
        SimulatedRig rig = new(_plant, settings, 30, _faults);
        _told = () => rig.Outputs;
        return rig;
    }

    protected override void BreakTank() => _faults.Add(new Fault(FaultKind.Open, Channel.Tank));
}
