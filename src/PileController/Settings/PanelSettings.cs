using System.Net;

namespace PileController.Settings;

/// <summary>The page.</summary>
public sealed record PanelSettings
{
    /// <summary>Address the page is served at.</summary>
    public string Address { get; init; } = "http://127.0.0.1:8080";

    /// <summary>How many times faster than life the simulated rig runs when served (1 to 3600).</summary>
    public double DemoSpeed { get; init; } = 60;

    /// <summary>Whether other machines may reach the page; a passphrase must be set too.</summary>
    public bool Lan { get; init; }

    /// <summary>Names the page answers to besides this machine's loopback and addresses, with commas between; empty for none.</summary>
    public string Names { get; init; } = "";

    /// <summary>File of the certificate for https (PEM); empty for none.</summary>
    public string Certificate { get; init; } = "";

    /// <summary>File of the certificate's key (PEM); empty for none.</summary>
    public string CertificateKey { get; init; } = "";

    /// <summary>Whether other machines may steer over plain http, which anyone on the way can read and use.</summary>
    public bool AllowPlainSteering { get; init; }

    /// <summary>Whether other machines may look without signing in.</summary>
    public bool LookOnLan { get; init; }

    /// <summary>The names, one by one.</summary>
    public IReadOnlyList<string> NameList() =>
        Names.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Whether a text is an address to listen at: http or https, localhost or an address in numbers, without a path.</summary>
    /// <param name="address">The address, "http://127.0.0.1:8080".</param>
    public static bool IsAddress(string address) =>
        Uri.TryCreate(address, UriKind.Absolute, out Uri? uri) && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps)
        && (uri.Host == "localhost" || IPAddress.TryParse(uri.Host.Trim('[', ']'), out _))
        && uri.PathAndQuery == "/" && uri.UserInfo.Length == 0 && uri.Fragment.Length == 0;

    /// <summary>Whether a text is a list of names of a machine.</summary>
    /// <param name="names">The names, "pile.home.arpa, pile".</param>
    public static bool AreNames(string names)
    {
        string[] list = names.Split(',', StringSplitOptions.TrimEntries);
        return names.Length == 0 || (names.Length <= 400 && list.All(name => Uri.CheckHostName(name) == UriHostNameType.Dns));
    }
}
