using PileController.Control.Decisions;

namespace PileController.Commissioning.Running;

/// <summary>From what a test wants held to the commands of the ordinary by-hand way.</summary>
internal static class Holds
{
    /// <summary>The commands that lead from one state of a test to the next.</summary>
    /// <param name="before">The step that ran, or null before the first.</param>
    /// <param name="after">The step that runs, or null after the last.</param>
    /// <param name="who">Who makes the test.</param>
    public static IReadOnlyList<Command> Between(Phase? before, Phase? after, string who)
    {
        if (ReferenceEquals(before, after))
        {
            return [];
        }

        IReadOnlyList<Move> wanted = after?.Moves ?? [];
        return
        [
            .. (before?.Moves ?? []).Select(move => move.Actuator).Except(wanted.Select(move => move.Actuator)).Select(actuator => new ReleaseHand(actuator)),
            .. wanted.Select(move => new TakeByHand(move.Actuator, move.Value, (long)(1000 * after!.HoldSeconds), who)),
        ];
    }
}
