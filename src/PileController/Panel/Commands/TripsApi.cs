using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Panel.Now;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary><c>POST /api/trips/{id}/clear</c>. Control refuses it while the cause stands, and says so at its tick.</summary>
internal static class TripsApi
{
    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapPost("/trips/{id}/clear", Clear);

    private static IResult Clear(HttpContext context, string id, CommandInbox inbox, PanelFeed feed, PanelSetup setup)
    {
        Interlock? row = setup.Interlocks.FirstOrDefault(row => row.Id == id);
        if (row is null)
        {
            return Answers.Refused(
                StatusCodes.Status404NotFound, "No such trip", $"There is no interlock \"{id}\". Known: {string.Join(", ", setup.Interlocks.Select(row => row.Id))}.");
        }

        return feed.Latest is { } news && NowReport.Latched(setup.Interlocks, news.Decision).Contains(id)
            ? inbox.Post(new ClearTrip(id), context)
            : Answers.Refused(StatusCodes.Status409Conflict, "Nothing to clear", $"\"{id}\" has not tripped.");
    }
}
