using PileController.Control.Decisions;

namespace PileController.Commissioning.Running;

/// <summary>Leads a grower through a test on a rig, tick by tick.</summary>
internal static class Leading
{
    /// <summary>Makes a test. However it ends, what it held is given back.</summary>
    /// <param name="procedure">The test.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="grower">Who is led.</param>
    /// <param name="who">Their name.</param>
    /// <param name="cancellation">Gives it up.</param>
    public static async Task<Walk> RunAsync(Procedure procedure, ITestRig rig, IGrower grower, string who, CancellationToken cancellation)
    {
        Walk walk = Walk.Begin(procedure);
        Phase? said = null;
        Phase? held = null;
        while (!walk.Ended)
        {
            if (!ReferenceEquals(said, walk.Phase))
            {
                said = walk.Phase;
                grower.Hear($"{walk.Step}/{procedure.Phases.Count}  {said!.Say}");
            }

            IReadOnlyList<Command> commands = Holds.Between(held, walk.Phase, who);
            held = walk.Phase;
            try
            {
                walk = walk.Take(await rig.TickAsync(commands, cancellation));
            }
            catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
            {
                walk = walk.GiveUp("It was ended.");
            }

            if (!walk.Ended && grower.Reply(walk) is { } reply)
            {
                walk = reply.GivesUp ? walk.GiveUp("The grower gave it up.") : walk.Answer(reply.Seconds, reply.Figure, reply.Text);
            }
        }

        await rig.TickAsync(Holds.Between(held, null, who), CancellationToken.None);
        return walk;
    }
}
