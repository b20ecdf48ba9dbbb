using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary><c>POST</c> and <c>DELETE /api/servicing</c>: lock the outputs off for work on the rig, or end that.</summary>
internal static class ServicingApi
{
    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapPost("/servicing", (HttpContext context, CommandInbox inbox) => inbox.Post(new SetServicing(true), context));
        api.MapDelete("/servicing", (HttpContext context, CommandInbox inbox) => inbox.Post(new SetServicing(false), context));
    }
}
