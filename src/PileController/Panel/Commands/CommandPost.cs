using PileController.Control.Decisions;
using PileController.Panel.Guard;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary>The answer to a command: the tick at which it takes effect.</summary>
internal sealed record AcceptedBody(long EffectiveSequence);

/// <summary>Hands commands to the loop.</summary>
internal static class CommandPost
{
    /// <summary>202 with the tick, or 503 when too many wait already.</summary>
    /// <param name="inbox">Where they wait.</param>
    /// <param name="command">What is asked for.</param>
    /// <param name="context">The request that asks for it.</param>
    public static IResult Post(this CommandInbox inbox, Command command, HttpContext context) =>
        inbox.TryPost(command with { Asker = AskerOf(context) }, out long sequence)
            ? TypedResults.Accepted((string?)null, new AcceptedBody(sequence))
            : Answers.Refused(
                StatusCodes.Status503ServiceUnavailable,
                "Too many commands wait",
                $"{CommandInbox.Capacity} commands wait for the next tick already; try again after it.");

    /// <summary>Who makes a request, and from where.</summary>
    public static Asker AskerOf(HttpContext context)
    {
        Told told = Told.Of(context);
        return new Asker(told.Caller.Name ?? told.Who, told.Caller.By, Sources.Shown(context.Connection.RemoteIpAddress));
    }
}
