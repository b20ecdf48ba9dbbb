using System.Net;

namespace PileController.Panel.Guard;

/// <summary>Says whether the panel may listen at an address. Until it has a lock: on this machine only.</summary>
public static class PanelAddress
{
    /// <summary>Checks the value of <c>--urls</c>: one address, or several with semicolons between.</summary>
    /// <returns>Null when all is well, else what is wrong, what was given and what is allowed.</returns>
    public static string? Check(string urls)
    {
        string[] parts = urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return parts.Length == 0 ? Refuse(urls, "no address is given") : parts.Select(CheckOne).FirstOrDefault(fault => fault is not null);
    }

    /// <summary>True for a name of this machine's own loopback: localhost, 127.x.x.x or ::1, brackets allowed.</summary>
    public static bool IsLoopbackName(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && IPAddress.IsLoopback(address));

    private static string? CheckOne(string url)
    {
        // A star or plus means "every address" to the server and is no host to the URI parser.
        if (url.Contains("://*", StringComparison.Ordinal) || url.Contains("://+", StringComparison.Ordinal))
        {
            return Refuse(url, "it listens on every address of this machine");
        }

        if (!Uri.TryCreate(url, UriKind.Absolute, out Uri? uri))
        {
            return Refuse(url, "it is no address");
        }

        if (uri.Scheme != Uri.UriSchemeHttp)
        {
            return Refuse(url, "only http is served here");
        }

        return IsLoopbackName(uri.Host) ? null : Refuse(url, "it can be reached from other machines, and the panel has no lock yet");
    }

    private static string Refuse(string given, string why) =>
        $"--urls: \"{given}\" is refused: {why}. Allowed: an http address of this machine only, such as http://127.0.0.1:8080.";
}
