namespace PileController.Panel.Guard;

/// <summary>Decides whether a request may come in. Pure: looks at the request's head only.</summary>
internal static class RequestGate
{
    /// <summary>Null when the request may come in, else why not.</summary>
    public static string? Check(HttpRequest request)
    {
        // A foreign name that resolves to this machine (DNS rebinding) arrives with that name in Host.
        if (!PanelAddress.IsLoopbackName(request.Host.Host))
        {
            return $"Host: \"{request.Host.Value}\" is not this machine. Allowed: localhost, 127.0.0.1 or [::1].";
        }

        string own = $"{request.Scheme}://{request.Host.Value}";
        if (request.Headers.Origin is { Count: > 0 } origin
            && !string.Equals(origin.ToString(), own, StringComparison.OrdinalIgnoreCase))
        {
            return $"Origin: \"{origin}\" is another site. Allowed: {own}.";
        }

        return HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) ? null : CheckChange(request);
    }

    private static string? CheckChange(HttpRequest request)
    {
        string site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0 && site is not ("same-origin" or "none"))
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
