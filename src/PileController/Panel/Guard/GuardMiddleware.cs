namespace PileController.Panel.Guard;

/// <summary>Puts the security headers on every answer and turns away what the gate refuses.</summary>
internal static class GuardMiddleware
{
    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
        + "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>Handles one request.</summary>
    public static Task RunAsync(HttpContext context, RequestDelegate next)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        if (context.Request.Path.StartsWithSegments("/api") || context.Request.Path == "/healthz")
        {
            headers.CacheControl = "no-store";
        }

        return RequestGate.Check(context.Request) is { } reason
            ? Answers.Refused(StatusCodes.Status403Forbidden, "Not from here", reason).ExecuteAsync(context)
            : next(context);
    }
}
