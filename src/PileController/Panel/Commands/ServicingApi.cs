using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary><c>POST</c> and <c>DELETE /api/servicing</c>: lock the outputs off for work on the rig, or end that.</summary>
internal static class ServicingApi
{
    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapPost("/servicing", (CommandInbox inbox) => inbox.Post(new SetServicing(true)));
        api.MapDelete("/servicing", (CommandInbox inbox) => inbox.Post(new SetServicing(false)));
    }
}
