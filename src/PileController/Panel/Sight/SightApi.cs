using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Access;
using PileController.Panel.Guard;
using PileController.Panel.Live;
using PileController.Panel.Now;
using PileController.Service;

namespace PileController.Panel.Sight;

/// <summary><c>GET /</c>: the page, with the newest tick in it for whoever may look.</summary>
internal static class SightApi
{
    // The choices of the browser's own storage, which the page also puts where the controller can see them.
    private const string UnitsCookie = "units";
    private const string SchemeCookie = "scheme";

    /// <summary>Adds the routes.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        // Anybody may fetch the page: it is where one signs in.
        routes.MapMethods("/", Looking.Methods, Get).Needs(Scope.None);
        routes.MapMethods("/index.html", Looking.Methods, Get).Needs(Scope.None);
    }

    private static ContentHttpResult Get(HttpContext context, SightPage page, NowText text, PanelFeed feed, PanelSetup setup, AccessDesk desk)
    {
        context.Response.Headers.CacheControl = "private, no-store";
        context.Response.Headers.ContentSecurityPolicy = GuardMiddleware.ContentPolicy(page.StyleHash, page.ScriptHash);
        return TypedResults.Text(Written(context, page, text, feed, setup, desk), "text/html; charset=utf-8");
    }

    private static string Written(HttpContext context, SightPage page, NowText text, PanelFeed feed, PanelSetup setup, AccessDesk desk)
    {
        PanelScheme scheme = context.Request.Cookies[SchemeCookie] switch
        {
            "light" => PanelScheme.Light,
            "dark" => PanelScheme.Dark,
            _ => PanelScheme.System,
        };
        PanelUnits units = context.Request.Cookies[UnitsCookie] switch
        {
            "metric" => PanelUnits.Metric,
            "american" => PanelUnits.American,
            _ => setup.Units,
        };
        SightReader reader = new(units == PanelUnits.American, scheme, AccessOf(Told.Of(context).Caller, desk));
        if (!EntryGate.MayLook(context, Told.Of(context).Caller, desk) || feed.Latest is not { } news)
        {
            return page.Empty(reader);
        }

        (NowBody now, string json) = text.Both(news);
        return page.Of(now, json, reader);
    }

    private static SightAccess AccessOf(Caller caller, AccessDesk desk) =>
        !desk.Locked ? SightAccess.Open : caller.By is null ? SightAccess.SignedOut : SightAccess.SignedIn;
}
