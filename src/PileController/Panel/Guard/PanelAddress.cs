using System.Net;
using PileController.Settings;

namespace PileController.Panel.Guard;

/// <summary>Says whether the panel may listen at an address.</summary>
public static class PanelAddress
{
    /// <summary>Checks the value of <c>--urls</c>: one address, or several with semicolons between.</summary>
    /// <param name="urls">The value.</param>
    /// <param name="panel">What the settings allow.</param>
    /// <param name="passphraseSet">Whether a passphrase is set.</param>
    /// <returns>Null when all is well, else what is wrong, what was given and what is allowed.</returns>
    public static string? Check(string urls, PanelSettings panel, bool passphraseSet)
    {
        string[] parts = urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return parts.Length == 0
            ? Refuse(urls, "no address is given", OwnMachine)
            : parts.Select(url => CheckOne(url, panel, passphraseSet)).FirstOrDefault(fault => fault is not null);
    }

    /// <summary>True for a name of this machine's own loopback: localhost, 127.x.x.x or ::1, brackets allowed.</summary>
    public static bool IsLoopbackName(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && IPAddress.IsLoopback(address));

    private const string OwnMachine = "an http address of this machine only, such as http://127.0.0.1:8080";

    private static string? CheckOne(string url, PanelSettings panel, bool passphraseSet)
    {
        // A star, a plus or a name would make the server listen on every address of the machine.
        if (!PanelSettings.IsAddress(url))
        {
            return Refuse(url, "it is no address of a page", $"{OwnMachine}, or with panel.lan http or https with an address in numbers, such as https://0.0.0.0:8443");
        }

        Uri uri = new(url);
        if (uri.Scheme == Uri.UriSchemeHttps && panel.Certificate.Length == 0)
        {
            return Refuse(url, "no certificate is set", "http, or https with panel.certificate and panel.certificateKey");
        }

        if (IsLoopbackName(uri.Host))
        {
            return null;
        }

        return !panel.Lan ? Refuse(url, "it can be reached from other machines, and panel.lan is false", $"{OwnMachine}, or panel.lan true")
            : !passphraseSet ? Refuse(url, "it can be reached from other machines, and no passphrase is set", $"{OwnMachine}, or a passphrase first (PileController passphrase)")
            : null;
    }

    private static string Refuse(string given, string why, string allowed) => $"--urls: \"{given}\" is refused: {why}. Allowed: {allowed}.";
}
