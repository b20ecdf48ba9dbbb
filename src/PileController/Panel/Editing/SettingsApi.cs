using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Panel.Commands;
using PileController.Service;
using PileController.Settings.Changes;

namespace PileController.Panel.Editing;

/// <summary><c>/api/settings</c>: read the settings, try an edit, and change them.</summary>
internal static class SettingsApi
{
    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/settings", Look);
        api.MapPost("/settings/try", TryAsync);
        api.MapPost("/settings", ApplyAsync);
    }

    private static IResult Look(PanelSetup setup) =>
        setup.Desk is { } desk ? TypedResults.Ok(SettingsBody.Of(desk, setup.OffsetMinutesAt)) : NotHere();

    private static async Task<IResult> TryAsync(HttpRequest request, PanelSetup setup)
    {
        if (setup.Desk is not { } desk)
        {
            return NotHere();
        }

        BodyFields body = await BodyFields.ReadAsync(request, "set", "reset");
        return TypedResults.Ok(EditBody.Of(desk.Try(EditOf(body))));
    }

    private static async Task<IResult> ApplyAsync(HttpRequest request, PanelSetup setup, PanelFeed feed, IHostApplicationLifetime lifetime)
    {
        if (setup.Desk is not { } desk)
        {
            return NotHere();
        }

        BodyFields body = await BodyFields.ReadAsync(request, "set", "reset", "base", "who");
        string who = body.Text("who", 40) ?? throw BodyFields.Fault("who", "nothing", "1 to 40 characters of text");
        string from = request.HttpContext.Connection.RemoteIpAddress?.ToString() ?? "unknown";
        EditOutcome? outcome;
        try
        {
            outcome = desk.Apply(EditOf(body), body.Text("base", 64), feed.Latest?.Decision.At.UtcMilliseconds ?? 0, who, from);
        }
        catch (IOException failed)
        {
            return Answers.Refused(StatusCodes.Status503ServiceUnavailable, "Not written", $"The change could not be written and is not in force: {failed.Message}");
        }

        if (outcome is null)
        {
            return Answers.Refused(
                StatusCodes.Status409Conflict, "Other settings", "The settings are no longer those you saw, or a change is about to take effect. Look again.");
        }

        if (outcome.Faults.Count > 0)
        {
            return TypedResults.Json(EditBody.Of(outcome), statusCode: StatusCodes.Status400BadRequest);
        }

        if (outcome.Differences.Count > 0)
        {
            // The answer first: the service stops, outputs safe, and is built anew with the settings as they are now.
            request.HttpContext.Response.OnCompleted(() =>
            {
                lifetime.StopApplication();
                return Task.CompletedTask;
            });
        }

        return TypedResults.Accepted((string?)null, EditBody.Of(outcome));
    }

    private static SettingsEdit EditOf(BodyFields body) => new(
        body.Map("set").ToDictionary(pair => pair.Key, pair => pair.Value.GetRawText(), StringComparer.Ordinal), body.List("reset"));

    private static ProblemHttpResult NotHere() => Answers.Refused(StatusCodes.Status404NotFound, "No settings here", "This service was started without a settings desk.");
}
