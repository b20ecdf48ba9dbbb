namespace PileController.Settings;

/// <summary>The page.</summary>
public sealed record PanelSettings
{
    /// <summary>Address the page is served at: http on this machine's own loopback.</summary>
    public string Address { get; init; } = "http://127.0.0.1:8080";

    /// <summary>How many times faster than life the simulated rig runs when served (1 to 3600).</summary>
    public double DemoSpeed { get; init; } = 60;

    /// <summary>Whether an address is plain http on this machine's own loopback, without a path.</summary>
    /// <param name="address">The address, "http://127.0.0.1:8080".</param>
    public static bool IsLoopback(string address) =>
        Uri.TryCreate(address, UriKind.Absolute, out Uri? uri) && uri.Scheme == Uri.UriSchemeHttp
        && uri.IsLoopback && uri.PathAndQuery == "/" && uri.UserInfo.Length == 0 && uri.Fragment.Length == 0;
}
