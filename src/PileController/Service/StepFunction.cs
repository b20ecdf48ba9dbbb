using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Service;

/// <summary>One pure step of control; <see cref="Controller.Step"/> in service, a stand-in under test.</summary>
/// <param name="settings">What the controller is told about the place.</param>
/// <param name="memory">What the tick before handed on.</param>
/// <param name="readings">What the rig said.</param>
/// <param name="commands">What was asked for since the tick before.</param>
/// <param name="at">The moment of the tick.</param>
public delegate (Decision Decision, Memory Memory) StepFunction(
    ControlSettings settings, Memory memory, RigReadings readings, IReadOnlyList<Command> commands, Instant at);
