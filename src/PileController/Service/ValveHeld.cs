using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;

namespace PileController.Service;

/// <summary>Tells a valve that a person holds from one that is made safe: both may be told an opening of nothing.</summary>
internal static class ValveHeld
{
    /// <summary>
    /// Whether the opening of a decision is what a person holds it at. While an interlock holds the water off, it is the
    /// interlock's, since that outranks a person.
    /// </summary>
    public static bool Of(Decision decision) =>
        decision.Mode == Mode.ByHand
        && decision.Hands.Any(hold => hold.Actuator == Actuator.Valve && hold.Value == decision.Outputs.ValveOpening)
        && !decision.Verdicts.Where((verdict, row) =>
            verdict is Verdict.Acting or Verdict.Latched
            && InterlockTable.All[row].Action is InterlockAction.HoldWater or InterlockAction.HoldAll).Any();
}
