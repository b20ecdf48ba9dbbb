using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;
using PileController.Rigs.Tests.Simulated;

namespace PileController.Rigs.Tests.Faults;

/// <summary>Faults of pump, valve and line, as the plant and the probes of a simulated rig feel them.</summary>
public sealed class PlantSideFaultsTests : IAsyncDisposable
{
    private static readonly Outputs Full = new(1, 1, 0.5, true);

    private readonly FakePlant _plant = new() { PumpMakesFlow = true };
    private readonly SimulatedRig _rig;

    public PlantSideFaultsTests()
    {
        _rig = new SimulatedRig(_plant, new RigSettings(), 30);
        _rig.Apply(Full);
        Run(6);
    }

    public ValueTask DisposeAsync() => _rig.DisposeAsync();

    [Fact]
    public void Advance_DeadPump_TurnsNotAndTakesNoPowerThoughTold()
    {
        Assert.InRange(Value(Channel.PumpPower), 21, 23);
        _rig.Faults.Add(new Fault(FaultKind.DeadPump));
        Run(3);

        Assert.Equal(1, _rig.Outputs.PumpDuty);
        Assert.Equal(0, _plant.Last.PumpDuty);
        Assert.Equal(0.5, _plant.Last.BlowerDuty);
        Assert.InRange(Value(Channel.PumpPower), 0, 0.25);
        Assert.Equal(0, Value(Channel.Flow));
    }

    [Fact]
    public void Advance_ValveJammed_StaysWhereItIsAndMovesAgainAfterwards()
    {
        _rig.Apply(Full with { ValveOpening = 0 });
        _rig.Advance(15);
        double position = _rig.ValvePosition;
        // A motor valve runs up to 2 % faster one way.
        Assert.Equal(0.49, position, 12);
        _rig.Faults.Add(new Fault(FaultKind.ValveJammed));
        Run(5);

        Assert.Equal(position, _rig.ValvePosition);
        Assert.Equal(position, _plant.Last.ValveOpening);
        Assert.True(_rig.Faults.Remove(FaultKind.ValveJammed));
        Run(5);
        Assert.Equal(0, _rig.ValvePosition);
    }

    [Fact]
    public void Advance_BlockedLine_TakesItsShareOfThePassageWhileThePumpRuns()
    {
        double open = Value(Channel.Flow);
        _rig.Faults.Add(new Fault(FaultKind.BlockedLine, Size: 0.75));
        Run(3);

        Assert.Equal(0.75, _plant.Last.FlowShareLost);
        Assert.Equal(open / 4, Value(Channel.Flow), 1.0 / 32);
        Assert.InRange(Value(Channel.PumpPower), 21, 23);
    }

    [Fact]
    public void Advance_FaultsCleared_IsAsBefore()
    {
        ActuatorState before = _plant.Last;
        _rig.Faults.Add(new Fault(FaultKind.DeadPump));
        _rig.Faults.Add(new Fault(FaultKind.BlockedLine, Size: 1));
        Run(1);
        Assert.NotEqual(before, _plant.Last);
        _rig.Faults.Clear();
        Run(1);

        Assert.Equal(before, _plant.Last);
    }

    [Fact]
    public void Read_ProbeFault_ShowsOnTheSimulatedRigItself()
    {
        _rig.Faults.Add(new Fault(FaultKind.Short, Channel.HeapTurns));

        Assert.Equal(ReadingQuality.Shorted, _rig.Read(Ticks.At(9))[Channel.HeapTurns].Quality);
    }

    [Fact]
    public void Ctor_FaultsInTheSettings_ActFromTheStart()
    {
        SimulatedRig rig = new(_plant, new RigSettings { Faults = [new Fault(FaultKind.DeadPump)] }, 30);
        rig.Apply(Full);
        rig.Advance(10);

        Assert.Equal(0, _plant.Last.PumpDuty);
    }

    private double Value(Channel channel) => _rig.Read(Ticks.At(0))[channel].ValueOf(channel);

    private void Run(int ticks)
    {
        for (int tick = 0; tick < ticks; tick++)
        {
            _rig.Read(Ticks.At(tick));
            _rig.Advance(Ticks.Seconds);
        }
    }
}
