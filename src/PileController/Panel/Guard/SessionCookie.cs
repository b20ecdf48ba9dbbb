namespace PileController.Panel.Guard;

/// <summary>The cookie of a session: no script can read it, no other site's page sends it.</summary>
internal static class SessionCookie
{
    private const string PlainName = "pile-session";

    // RFC 6265bis: a browser takes a name with this prefix only over https, for this host alone and all its paths.
    private const string SecureName = "__Host-pile-session";
    private static readonly TimeSpan Age = TimeSpan.FromDays(30);

    /// <summary>The secret a request brings, or null.</summary>
    public static string? Read(HttpRequest request) => request.Cookies[NameOf(request)];

    /// <summary>Gives the secret to the browser.</summary>
    public static void Write(HttpContext context, string secret) =>
        context.Response.Cookies.Append(NameOf(context.Request), secret, Options(context.Request, Age));

    /// <summary>Takes it away.</summary>
    public static void Clear(HttpContext context) =>
        context.Response.Cookies.Delete(NameOf(context.Request), Options(context.Request, null));

    private static string NameOf(HttpRequest request) => request.IsHttps ? SecureName : PlainName;

    private static CookieOptions Options(HttpRequest request, TimeSpan? age) => new()
    {
        HttpOnly = true,
        SameSite = SameSiteMode.Strict,
        Secure = request.IsHttps,
        Path = "/",
        MaxAge = age,
    };
}
