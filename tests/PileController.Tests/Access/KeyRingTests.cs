using Microsoft.Extensions.Time.Testing;
using PileController.Access;

namespace PileController.Tests.Access;

public sealed class KeyRingTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-keys-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2026, 1, 20, 6, 0, 0, TimeSpan.Zero));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Session_Restarted_IsStillFound()
    {
        (string secret, _) = Ring().Open("Robin", "192.168.1.7", "salt");

        Assert.Equal("Robin", Ring().Find(secret, "salt")?.Name);
    }

    [Fact]
    public void Session_Closed_StaysClosedOverARestart()
    {
        KeyRing ring = Ring();
        (string secret, Session session) = ring.Open("Robin", "here", "salt");
        ring.Close(session);

        Assert.Null(ring.Find(secret, "salt"));
        Assert.Null(Ring().Find(secret, "salt"));
    }

    [Fact]
    public void Session_PassphraseReplaced_Ends()
    {
        KeyRing ring = Ring();
        (string secret, _) = ring.Open("Robin", "here", "salt");

        Assert.Null(ring.Find(secret, "other salt"));
    }

    [Fact]
    public void Session_Idle_EndsAfterTwelveHoursAndUsedAfterThirtyDays()
    {
        KeyRing ring = Ring();
        (string idle, _) = ring.Open("a", "here", "salt");
        (string used, _) = ring.Open("b", "here", "salt");
        int hours = 0;
        while (ring.Find(used, "salt") is not null)
        {
            _clock.Advance(TimeSpan.FromHours(6));
            hours += 6;
            Assert.Equal(hours < 12, hours < 12 && ring.Find(idle, "salt") is not null);
        }

        Assert.Equal(30 * 24, hours);
        Assert.Null(ring.Find(idle, "salt"));
    }

    [Fact]
    public void Session_ManyMore_PushOutTheOneNotUsedForLongest()
    {
        KeyRing ring = Ring();
        (string first, _) = ring.Open("first", "here", "salt");
        (string second, _) = ring.Open("second", "here", "salt");
        _clock.Advance(TimeSpan.FromMinutes(1));
        ring.Find(first, "salt");
        for (int i = 0; i < 63; i++)
        {
            ring.Open($"{i}", "here", "salt");
        }

        Assert.NotNull(ring.Find(first, "salt"));
        Assert.Null(ring.Find(second, "salt"));
    }

    [Fact]
    public void Token_TakenBack_IsNotFoundAgain()
    {
        KeyRing ring = Ring();
        string secret = ring.Make("weather", Scope.Forecast, "Robin")!.Value.Secret;
        Assert.Equal(Scope.Forecast, Ring().FindToken(secret)?.Scopes);

        Assert.True(ring.Revoke("weather"));

        Assert.Null(ring.FindToken(secret));
        Assert.Null(Ring().FindToken(secret));
        Assert.False(ring.Revoke("weather"));
    }

    [Fact]
    public void Token_OfATakenName_IsNotMade()
    {
        KeyRing ring = Ring();
        ring.Make("weather", Scope.Forecast, "Robin");

        Assert.Null(ring.Make("weather", Scope.Steer, "Robin"));
    }

    [Fact]
    public void File_OfKeys_HoldsNoSecretAndIsItsOwnersOnly()
    {
        KeyRing ring = Ring();
        string cookie = ring.Open("Robin", "here", "salt").Secret;
        string token = ring.Make("weather", Scope.Forecast, "Robin")!.Value.Secret;
        string path = Path.Combine(_folder, KeyRing.Name);

        string text = File.ReadAllText(path);

        Assert.DoesNotContain(cookie, text, StringComparison.Ordinal);
        Assert.DoesNotContain(token, text, StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("{\"schema\":2,\"sessions\":[],\"tokens\":[]}")]
    [InlineData("{\"schema\":1,\"sessions\":null,\"tokens\":[]}")]
    public void File_Spoilt_OpensNothingAndIsMadeAnew(string text)
    {
        File.WriteAllText(Path.Combine(_folder, KeyRing.Name), text);

        KeyRing ring = Ring();
        (string secret, _) = ring.Open("Robin", "here", "salt");

        Assert.NotNull(Ring().Find(secret, "salt"));
    }

    private KeyRing Ring() => new(_folder, _clock);
}
