using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Rigs;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;

namespace PileController.Simulation;

/// <summary>All a simulated holding remembers, so that a run can be stored and taken up to the same bits.</summary>
/// <param name="Plant">Heap, house, loop, battery.</param>
/// <param name="Rig">Probes and actuators.</param>
/// <param name="Control">What the controller hands from tick to tick.</param>
internal sealed record HoldingState(PlantState Plant, SimulatedRigState Rig, Memory Control);

/// <summary>
/// A controller over a simulated rig over a plant, tick by tick as fast as it goes. Seasons and the demo's history are
/// made with it; the tick loop of the service does the same in its own time.
/// </summary>
internal sealed class Holding
{
    private readonly ControlSettings _control;
    private readonly int _offsetMinutes;

    public Holding(
        PlantBuild build, ControlSettings control, RigSettings rig, WeatherSeries weather, int offsetMinutes, HoldingState state,
        FaultBoard? faults = null)
        : this(build, control, rig, weather, offsetMinutes, state.Plant, faults)
    {
        Rig.Restore(state.Rig);
        Memory = state.Control;
    }

    public Holding(
        PlantBuild build, ControlSettings control, RigSettings rig, WeatherSeries weather, int offsetMinutes, long startUtcMilliseconds,
        double quickSeconds = Plant.UsualQuickSeconds)
        : this(build, control, rig, weather, offsetMinutes, Plant.Fresh(build, weather, startUtcMilliseconds), null, quickSeconds)
    {
    }

    private Holding(
        PlantBuild build, ControlSettings control, RigSettings rig, WeatherSeries weather, int offsetMinutes, PlantState plant,
        FaultBoard? faults, double quickSeconds = Plant.UsualQuickSeconds)
    {
        _control = control;
        _offsetMinutes = offsetMinutes;
        Plant = new Plant(build, weather, plant, quickSeconds);
        Rig = new SimulatedRig(new HoldingPlant(Plant), rig, build.Loop.ValveTravelSeconds, faults, control.Drive, control.ValveFeedback);
        Memory = Memory.Fresh;
    }

    /// <summary>The plant.</summary>
    public Plant Plant { get; }

    /// <summary>The rig.</summary>
    public SimulatedRig Rig { get; }

    /// <summary>What the last tick handed on.</summary>
    public Memory Memory { get; private set; }

    /// <summary>The moment the plant stands at. Simulated time never jumps, so it is its own monotonic clock.</summary>
    public Instant Now => new(Plant.UtcMilliseconds, Plant.UtcMilliseconds, _offsetMinutes);

    /// <summary>What the rig says now.</summary>
    public RigReadings Read() => Rig.Read(Now);

    /// <summary>Decides on readings and lets the plant live one tick with the outputs.</summary>
    public Decision Tick(RigReadings readings, IReadOnlyList<Command> commands)
    {
        (Decision decision, Memory next) = Controller.Step(_control, Memory, readings, commands, Now);
        Memory = next;
        Rig.Apply(decision.Outputs);
        Rig.Advance(_control.TickSeconds);
        return decision;
    }

    /// <summary>All it remembers; at a whole minute of the plant only.</summary>
    public HoldingState Snapshot() => new(Plant.Snapshot(), Rig.Export(), Memory);
}
