using PileController.Access;

namespace PileController.Panel.Guard;

/// <summary>Puts the security headers on every answer, turns away whoever may not, and tells the journal.</summary>
internal static class GuardMiddleware
{
    /// <summary>RFC 9110 wants a challenge with every 401; this one makes no browser ask by itself.</summary>
    public const string Challenge = "Bearer";

    /// <summary>What a document may fetch and run.</summary>
    /// <param name="style">Hash of a style within the document itself ("sha256-…"), or null for none.</param>
    /// <param name="script">The same of a script.</param>
    public static string ContentPolicy(string? style = null, string? script = null) =>
        $"default-src 'none'; script-src 'self'{Also(script)}; style-src 'self'{Also(style)}; img-src 'self' data:; "
        + "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>Handles one request.</summary>
    public static async Task RunAsync(HttpContext context, RequestDelegate next, AccessDesk desk)
    {
        IHeaderDictionary headers = context.Response.Headers;
        Protect(context.Request, headers);
        if (context.Request.Path.StartsWithSegments("/api") || context.Request.Path == "/healthz")
        {
            headers.CacheControl = "no-store";
        }

        (Caller caller, Refusal? refusal) = RequestGate.Check(context.Request, desk.Setup.Names) is { } reason
            ? (Caller.Nobody, new Refusal(StatusCodes.Status403Forbidden, "Not from here", reason))
            : EntryGate.Check(context, desk);
        Told told = new(caller) { Why = refusal?.Reason };
        context.Features.Set(told);

        // Where a fault is caught further in, the route that was found is forgotten there.
        Endpoint? found = context.GetEndpoint();
        if (refusal is null)
        {
            await next(context);
        }
        else
        {
            if (refusal.Status == StatusCodes.Status401Unauthorized)
            {
                headers.WWWAuthenticate = Challenge;
            }

            await Answers.Refused(refusal.Status, refusal.Title, refusal.Reason).ExecuteAsync(context);
        }

        Tell(context, found, told, desk.Journal);
    }

    private static string Also(string? hash) => hash is null ? string.Empty : $" '{hash}'";

    // Scripts and styles are no documents: what only a document heeds would be a third of the first view's weight.
    private static void Protect(HttpRequest request, IHeaderDictionary headers)
    {
        headers.XContentTypeOptions = "nosniff";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (request.Path.StartsWithSegments("/js") || request.Path.StartsWithSegments("/css"))
        {
            return;
        }

        headers.ContentSecurityPolicy = ContentPolicy();
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";

        // It makes a browser begin anew in a process of its own, half of the wait for the first look; who came by
        // themselves have nobody to be cut off from.
        if (RequestGate.MayBeHeld(request))
        {
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
        }
    }

    private static void Tell(HttpContext context, Endpoint? found, Told told, AccessJournal journal)
    {
        int status = context.Response.StatusCode;
        bool refused = status >= StatusCodes.Status400BadRequest;
        if (!Needing.IsChange(context.Request) && !(refused && IsTelling(status)))
        {
            return;
        }

        string route = (found as RouteEndpoint)?.RoutePattern.RawText is { } text ? "/" + text.Trim('/') : "an unknown path";
        journal.Add(
            told.Caller.Name ?? told.Who, Sources.Shown(context.Connection.RemoteIpAddress), told.Caller.By,
            $"{Method(context.Request)} {route}", !refused, status, refused ? told.Why ?? UnknownPath(context, found) : null);
    }

    // What a page asks for and cannot have now (a run that is over, a value out of range) is no matter of access.
    private static bool IsTelling(int status) =>
        status is StatusCodes.Status401Unauthorized or StatusCodes.Status403Forbidden or StatusCodes.Status404NotFound
            or StatusCodes.Status405MethodNotAllowed or StatusCodes.Status413PayloadTooLarge;

    private static string? UnknownPath(HttpContext context, Endpoint? found) => found is null ? context.Request.Path.Value : null;

    private static string Method(HttpRequest request) => request.Method.Length <= 10 && request.Method.All(char.IsAsciiLetter) ? request.Method : "?";
}
