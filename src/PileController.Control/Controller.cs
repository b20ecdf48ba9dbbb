using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Control;

/// <summary>The controller: one pure step.</summary>
public static class Controller
{
    /// <summary>
    /// Decides one tick. A pure function of its arguments: no clock, no input or output, no randomness; the same
    /// arguments give the same bits.
    /// </summary>
    /// <param name="settings">What the controller is told about the place.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="readings">What the rig said.</param>
    /// <param name="commands">What people and the shell asked for since the tick before, in order.</param>
    /// <param name="at">The moment of this tick.</param>
    public static (Decision Decision, Memory Memory) Step(
        ControlSettings settings, Memory memory, RigReadings readings, IReadOnlyList<Command> commands, Instant at)
    {
        Decision decision = new()
        {
            Sequence = memory.Sequence + 1,
            At = at,
            Readings = readings,
            Estimate = default,
            Mode = memory.Mode,
            ModeBefore = memory.Mode,
            ModeSinceMonotonicMilliseconds = 0,
            Kinds = DecisionKinds.Steady,
            WantWatts = 0,
            MeansWatts = 0,
            GrantWatts = 0,
            WaterGrantWatts = 0,
            AirGrantWatts = 0,
            Curb = Curb.NoWant,
            HouseSetPointCelsius = settings.HouseNightC,
            Draw = default,
            Totals = memory.Totals,
            Verdicts = [],
            FirstActing = -1,
            Hands = [],
            Outputs = Outputs.Safe,
            Note = null,
        };
        return (decision, memory with { Sequence = decision.Sequence });
    }
}
