using System.Net;
using Microsoft.AspNetCore.Http;
using PileController.Access;
using PileController.Panel.Guard;

namespace PileController.Tests.Panel.Guard;

/// <summary>Who may what from where, for a request that comes from another machine.</summary>
public sealed class EntryGateTests : IDisposable
{
    private const string Salted = "warm chips in january";
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-gate-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("GET", false, false, null, 401)]
    [InlineData("GET", false, false, "look", 0)]
    [InlineData("GET", false, false, "forecast", 403)]
    [InlineData("GET", true, false, null, 0)]
    [InlineData("POST", true, false, null, 401)]
    [InlineData("POST", true, false, "look", 403)]
    [InlineData("POST", true, false, "steer", 403)]
    [InlineData("POST", true, true, "steer", 0)]
    [InlineData("DELETE", false, true, "steer", 0)]
    [InlineData("HEAD", false, false, null, 401)]
    public void Check_OverPlainHttpFromAnotherMachine_AnswersByScopeAndSetting(
        string method, bool lookOnLan, bool allowPlain, string? scope, int status)
    {
        using AccessDesk desk = Desk(lookOnLan, allowPlain, locked: true);
        DefaultHttpContext context = From("192.168.1.7", method, https: false);
        Bring(context, desk, scope);

        Assert.Equal(status, EntryGate.Check(context, desk).Refusal?.Status ?? 0);
    }

    [Fact]
    public void Check_OverHttps_SteersWithoutTheSettingForPlain()
    {
        using AccessDesk desk = Desk(false, false, locked: true);
        DefaultHttpContext context = From("192.168.1.7", "POST", https: true);
        Bring(context, desk, "steer");

        Assert.Null(EntryGate.Check(context, desk).Refusal);
    }

    [Theory]
    [InlineData("192.168.1.7", 401)]
    [InlineData("fe80::1", 401)]
    [InlineData("127.0.0.1", 0)]
    [InlineData("::1", 0)]
    [InlineData("::ffff:127.0.0.1", 0)]
    public void Check_WithoutAPassphrase_LetsInThisMachineOnly(string from, int status)
    {
        using AccessDesk desk = Desk(true, true, locked: false);

        Assert.Equal(status, EntryGate.Check(From(from, "GET", https: false), desk).Refusal?.Status ?? 0);
        Assert.Equal(status, EntryGate.Check(From(from, "POST", https: false), desk).Refusal?.Status ?? 0);
    }

    [Fact]
    public void Check_AKeyThatIsNotKnown_IsRefusedEvenWhereLookingIsOpen()
    {
        using AccessDesk desk = Desk(true, true, locked: true);
        DefaultHttpContext context = From("127.0.0.1", "GET", https: false);
        context.Request.Headers.Authorization = "Bearer pile_forged";

        Assert.Equal(401, EntryGate.Check(context, desk).Refusal?.Status);
    }

    [Theory]
    [InlineData("192.168.1.4", true)]
    [InlineData("PILE.home.arpa:8080", true)]
    [InlineData("localhost:8080", true)]
    [InlineData("192.168.1.5", false)]
    [InlineData("pile.home.arpa.example.org", false)]
    [InlineData("", false)]
    public void Host_OnTheLan_IsAnOwnAddressOrANameThatIsSet(string host, bool good)
    {
        DefaultHttpContext context = From("192.168.1.7", "GET", https: false);
        context.Request.Host = new HostString(host);

        Assert.Equal(good, RequestGate.Check(context.Request, ["pile.home.arpa"]) is null);
    }

    private static DefaultHttpContext From(string address, string method, bool https)
    {
        DefaultHttpContext context = new();
        context.Connection.RemoteIpAddress = IPAddress.Parse(address);
        context.Connection.LocalIpAddress = IPAddress.Parse("::ffff:192.168.1.4");
        context.Request.Method = method;
        context.Request.Scheme = https ? "https" : "http";
        context.Request.Host = new HostString("192.168.1.4");
        return context;
    }

    private static void Bring(DefaultHttpContext context, AccessDesk desk, string? scope)
    {
        if (scope is not null)
        {
            string secret = desk.Keys.Make(scope, Enum.Parse<Scope>(scope, ignoreCase: true), "Robin")!.Value.Secret;
            context.Request.Headers.Authorization = $"Bearer {secret}";
        }
    }

    private AccessDesk Desk(bool lookOnLan, bool allowPlain, bool locked) => new(new AccessSetup(_folder, TimeProvider.System)
    {
        LookOnLan = lookOnLan,
        AllowPlainSteering = allowPlain,
        ForThisRun = locked ? new(SecretHash.Of(Salted, 10)) : null,
    });
}
