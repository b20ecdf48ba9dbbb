using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Panel.Now;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary><c>POST</c> and <c>DELETE /api/hand</c>: take an actuator by hand until an end time, or give it back.</summary>
internal static class HandApi
{
    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapPost("/hand", TakeAsync);
        api.MapDelete("/hand", Release);
    }

    private static async Task<IResult> TakeAsync(HttpRequest request, CommandInbox inbox, PanelFeed feed, PanelSetup setup)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "actuator", "value", "minutes", "who");
        Actuator actuator = body.Choice<Actuator>("actuator");
        double value = body.Number("value", 0, 1);
        double minutes = body.Number("minutes", 1, 1440);
        string who = body.Text("who", 40) ?? throw BodyFields.Fault("who", "nothing", "1 to 40 characters of text");
        if (actuator == Actuator.Backup && value is not (0 or 1))
        {
            throw BodyFields.Fault("value", value.ToString(), "0 (off) or 1 (on) for the backup");
        }

        return WhyRefused(actuator, feed.Latest?.Decision, setup) is { } reason
            ? Answers.Refused(StatusCodes.Status409Conflict, "Not by hand now", reason)
            : inbox.Post(new TakeByHand(actuator, value, (long)(minutes * 60_000), who), request.HttpContext);
    }

    private static IResult Release(HttpContext context, CommandInbox inbox, string? actuator) =>
        inbox.Post(new ReleaseHand(actuator is null ? null : WireNames.Parse<Actuator>(actuator, "actuator")), context);

    /// <summary>Why an actuator cannot be taken now, or null.</summary>
    internal static string? WhyRefused(Actuator actuator, Decision? decision, PanelSetup setup)
    {
        if ((actuator == Actuator.Blower && !setup.Control.BlowerFitted) || (actuator == Actuator.Backup && !setup.Control.BackupFitted))
        {
            return $"No {WireNames.Of(actuator)} is fitted.";
        }

        return decision?.Mode switch
        {
            null => "The controller has not finished its first tick.",
            Mode.Tripped => $"The rig is tripped ({Standing(setup, decision)}). Clear the trip once its cause is gone; a trip cannot be overridden by hand.",
            Mode.Servicing => "The outputs are locked off for work on the rig. End servicing first.",
            _ => null,
        };
    }

    private static string Standing(PanelSetup setup, Decision decision)
    {
        string ids = string.Join(", ", NowReport.Latched(setup.Interlocks, decision));
        return ids.Length > 0 ? ids : "cause not told";
    }
}
