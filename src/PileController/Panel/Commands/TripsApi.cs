using Microsoft.AspNetCore.Http.Features;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Panel.Now;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary><c>POST /api/trips/{id}/clear</c>, with <c>who</c> where a name is given. Control refuses it while the cause stands, and says so at its tick.</summary>
internal static class TripsApi
{
    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapPost("/trips/{id}/clear", ClearAsync);

    private static async Task<IResult> ClearAsync(HttpContext context, string id, CommandInbox inbox, PanelFeed feed, PanelSetup setup)
    {
        Interlock? row = setup.Interlocks.FirstOrDefault(row => row.Id == id);
        if (row is null)
        {
            return Answers.Refused(
                StatusCodes.Status404NotFound, "No such trip", $"There is no interlock \"{id}\". Known: {string.Join(", ", setup.Interlocks.Select(row => row.Id))}.");
        }

        // Nobody is kept from clearing for want of a name.
        if (context.Features.Get<IHttpRequestBodyDetectionFeature>() is { CanHaveBody: true })
        {
            BodyFields body = await BodyFields.ReadAsync(context.Request, "who");
            _ = body.Text("who", 40);
        }

        return feed.Latest is { } news && NowReport.Latched(setup.Interlocks, news.Decision).Contains(id)
            ? inbox.Post(new ClearTrip(id), context)
            : Answers.Refused(StatusCodes.Status409Conflict, "Nothing to clear", $"\"{id}\" has not tripped.");
    }
}
