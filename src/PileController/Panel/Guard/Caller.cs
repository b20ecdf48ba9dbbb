using System.Net;
using PileController.Access;

namespace PileController.Panel.Guard;

/// <summary>Who makes a request.</summary>
/// <param name="Scopes">What they may do.</param>
/// <param name="By">How they are known: "session", "token", "loopback" (no passphrase is set), or null for not at all.</param>
/// <param name="Name">The name of the session or key, or null.</param>
/// <param name="Session">The session, or null.</param>
/// <param name="Secret">The secret of the session's cookie, or null.</param>
/// <param name="Mark">The mark of the session or key, or null.</param>
internal sealed record Caller(Scope Scopes, string? By, string? Name, Session? Session = null, string? Secret = null, string? Mark = null)
{
    /// <summary>Nobody known.</summary>
    public static Caller Nobody { get; } = new(Scope.None, null, null);

    /// <summary>Anybody at this machine, while no passphrase is set.</summary>
    public static Caller AtThisMachine { get; } = new(Scope.Steer, "loopback", null);
}

/// <summary>Where a request comes from.</summary>
internal static class Sources
{
    private const string Loopback = "this machine";
    private const int SiteBytes = 8;

    /// <summary>Whether it comes from this machine itself.</summary>
    public static bool IsLocal(HttpContext context) => context.Connection.RemoteIpAddress is { } address && IPAddress.IsLoopback(Plain(address));

    /// <summary>The address, for people.</summary>
    public static string Shown(IPAddress? address) =>
        address is null ? "address not known" : IPAddress.IsLoopback(Plain(address)) ? Loopback : Plain(address).ToString();

    /// <summary>What counts as one source: an IPv4 address, or the site of an IPv6 address, since one machine has many of those.</summary>
    public static string Of(IPAddress? address)
    {
        if (address is null || Plain(address) is not { AddressFamily: System.Net.Sockets.AddressFamily.InterNetworkV6 } six || IPAddress.IsLoopback(six))
        {
            return Shown(address);
        }

        return $"{Convert.ToHexStringLower(six.GetAddressBytes()[..SiteBytes])}/64";
    }

    /// <summary>An IPv4 address as itself, also where it comes wrapped in IPv6.</summary>
    public static IPAddress Plain(IPAddress address) => address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
}
