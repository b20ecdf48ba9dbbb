using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary>The answer to a command: the tick at which it takes effect.</summary>
internal sealed record AcceptedBody(long EffectiveSequence);

/// <summary>Hands commands to the loop.</summary>
internal static class CommandPost
{
    /// <summary>202 with the tick, or 503 when too many wait already.</summary>
    public static IResult Post(this CommandInbox inbox, Command command) =>
        inbox.TryPost(command, out long sequence)
            ? TypedResults.Accepted((string?)null, new AcceptedBody(sequence))
            : Answers.Refused(
                StatusCodes.Status503ServiceUnavailable,
                "Too many commands wait",
                $"{CommandInbox.Capacity} commands wait for the next tick already; try again after it.");
}
