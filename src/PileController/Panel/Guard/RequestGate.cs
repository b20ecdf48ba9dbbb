using System.Net;

namespace PileController.Panel.Guard;

/// <summary>Decides whether a request may come in. Pure: looks at the request's head only.</summary>
internal static class RequestGate
{
    private const string OwnSite = "same-origin";

    // A person's own doing: typed, or kept as a bookmark.
    private const string NoSite = "none";

    /// <summary>Null when the request may come in, else why not.</summary>
    /// <param name="request">The request.</param>
    /// <param name="names">Names this machine answers to besides its addresses.</param>
    public static string? Check(HttpRequest request, IReadOnlyList<string> names)
    {
        if (!IsOwn(request, names))
        {
            return $"Host: \"{request.Host.Value}\" is not this machine. Allowed: localhost, the address it is reached at, or a name of panel.names.";
        }

        string own = $"{request.Scheme}://{request.Host.Value}";
        if (request.Headers.Origin is { Count: > 0 } origin
            && !string.Equals(origin.ToString(), own, StringComparison.OrdinalIgnoreCase))
        {
            return $"Origin: \"{origin}\" is another site. Allowed: {own}.";
        }

        return Needing.IsChange(request) ? CheckChange(request) : null;
    }

    /// <summary>Whether a request that came in (<see cref="Check"/>) says that a page of this machine made it.</summary>
    public static bool SaysItsOwnSite(HttpRequest request) =>
        request.Headers.Origin is { Count: > 0 } || request.Headers["Sec-Fetch-Site"].ToString() == OwnSite;

    /// <summary>Whether another site may have had this opened, and may hold on to the window it is shown in.</summary>
    public static bool MayBeHeld(HttpRequest request) => request.Headers["Sec-Fetch-Site"].ToString() is not (OwnSite or NoSite);

    // A foreign name that resolves to this machine (DNS rebinding) arrives with that name in Host; an address cannot be
    // made to resolve to anything else, but must be the one the request came in by.
    private static bool IsOwn(HttpRequest request, IReadOnlyList<string> names)
    {
        string host = request.Host.Host;
        return PanelAddress.IsLoopbackName(host)
            || names.Contains(host, StringComparer.OrdinalIgnoreCase)
            || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address)
                && request.HttpContext.Connection.LocalIpAddress is { } own && Sources.Plain(own).Equals(address));
    }

    private static string? CheckChange(HttpRequest request)
    {
        string site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0 && site is not (OwnSite or NoSite))
        {
            return $"Sec-Fetch-Site: \"{site}\" is not allowed for a change. Allowed: same-origin or none.";
        }

        // A form on another site can post without asking first, but not with this type.
        bool hasBody = request.ContentLength is > 0 || request.Headers.TransferEncoding.Count > 0;
        return hasBody && !request.HasJsonContentType()
            ? $"Content-Type: \"{request.ContentType}\" is not allowed for a change. Allowed: application/json."
            : null;
    }
}
