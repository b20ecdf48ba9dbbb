using Microsoft.Extensions.Time.Testing;
using PileController.Access;

namespace PileController.Tests.Access;

public sealed class AccessDeskTests : IDisposable
{
    private const string Passphrase = "warm chips in january";
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-desk-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2026, 1, 20, 6, 0, 0, TimeSpan.Zero));
    private readonly AccessDesk _desk;

    public AccessDeskTests() => _desk = new AccessDesk(new AccessSetup(_folder, _clock));

    public void Dispose()
    {
        _desk.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Passphrase_SetBesideTheRunningProgram_CountsAtOnceAndItsReplacementEndsSessions()
    {
        Assert.False(_desk.Locked);
        Set(Passphrase);
        Assert.True(_desk.Locked);
        SignIn sign = await _desk.SignInAsync(Passphrase, "Robin", "a", "a");
        Assert.NotNull(_desk.Find(sign.Secret!));

        Set("another passphrase");

        Assert.Null(_desk.Find(sign.Secret!));
        Assert.Null((await _desk.SignInAsync(Passphrase, "Robin", "a", "a")).Session);
    }

    [Fact]
    public async Task SignIn_FromManySourcesAtOnce_HashesOneAfterAnotherAndTurnsTheRestAway()
    {
        Set(Passphrase);
        using SemaphoreSlim go = new(0);
        int running = 0;
        int most = 0;
        using AccessDesk desk = new(new AccessSetup(_folder, _clock)
        {
            Fits = (_, _) =>
            {
                int now = Interlocked.Increment(ref running);
                most = Math.Max(most, now);
                go.Wait();
                Interlocked.Decrement(ref running);
                return false;
            },
        });

        Task<SignIn>[] tries = [.. Enumerable.Range(0, 40).Select(i => desk.SignInAsync("wrong passphrase", "Robin", $"source {i}", "a"))];
        Task<SignIn>[] turnedAway = [.. tries.Where(one => one.IsCompleted)];
        List<Task<SignIn>> waiting = [.. tries.Except(turnedAway)];

        // Four wait; the thread may have taken the first of them in hand already.
        Assert.InRange(waiting.Count, 4, 5);
        Assert.All(turnedAway, one => Assert.NotNull(one.Result.WaitSeconds));
        while (waiting.Count > 0)
        {
            go.Release();
            waiting.Remove(await Task.WhenAny(waiting));
        }

        Assert.Equal(1, most);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("{\"schema\":1,\"passphrase\":null,\"code\":null,\"more\":1}")]
    [InlineData("{\"schema\":9,\"passphrase\":null,\"code\":null}")]
    [InlineData("{\"schema\":1,\"passphrase\":{\"scheme\":\"none\",\"iterations\":1,\"salt\":\"\",\"hash\":\"\"},\"code\":null}")]
    public async Task File_Spoilt_LocksAndLetsNobodyIn(string text)
    {
        Set(Passphrase);
        string secret = (await _desk.SignInAsync(Passphrase, "Robin", "a", "a")).Secret!;

        await File.WriteAllTextAsync(Path.Combine(_folder, AccessFile.Name), text);

        Assert.True(_desk.Locked);
        Assert.Contains(AccessFile.Name, _desk.Fault);
        Assert.Null(_desk.Find(secret));
        Assert.Null((await _desk.SignInAsync(Passphrase, "Robin", "a", "a")).Session);
    }

    [Fact]
    public async Task Code_Used_SetsThePassphraseOnceAndSignsIn()
    {
        string code = Offer(TimeSpan.FromMinutes(15));

        SignIn[] both = await Task.WhenAll(
            _desk.SetByCodeAsync(code, "first new passphrase", "Robin", "a", "a"), _desk.SetByCodeAsync(code, "other new passphrase", "Mallory", "b", "b"));

        Assert.Single(both, sign => sign.Session is not null);
        Assert.Null((await _desk.SetByCodeAsync(code, "a third passphrase", "Mallory", "c", "c")).Session);
    }

    [Fact]
    public async Task Code_AfterAQuarterOfAnHour_IsOver()
    {
        string code = Offer(TimeSpan.FromMinutes(15));
        _clock.Advance(TimeSpan.FromMinutes(15));

        Assert.Null((await _desk.SetByCodeAsync(code, "a new passphrase", "Robin", "a", "a")).Session);
    }

    [Fact]
    public async Task SignIn_AStorm_IsNotHashedAndWhoeverIsInStaysIn()
    {
        Set(Passphrase);
        string secret = (await _desk.SignInAsync(Passphrase, "Robin", "home", "home")).Secret!;

        SignIn[] storm = await Task.WhenAll(Enumerable.Range(0, 2000).Select(i => _desk.SignInAsync($"wrong {i}", "x", $"source {i % 100}", "x")));

        // The clock stands: what the bound for all lets through at once is all that was looked at.
        Assert.InRange(storm.Count(sign => sign.WaitSeconds is null), 1, 30);
        Assert.All(storm, sign => Assert.Null(sign.Session));
        Assert.NotNull(_desk.Find(secret));
    }

    [Fact]
    public void File_Written_IsItsOwnersOnlyAndBelongsToTheFoldersOwner()
    {
        Set(Passphrase);
        string path = Path.Combine(_folder, AccessFile.Name);

        Assert.DoesNotContain(Passphrase, File.ReadAllText(path), StringComparison.Ordinal);
        Assert.Equal([AccessFile.Name], Directory.GetFiles(_folder).Select(Path.GetFileName));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        }
    }

    private void Set(string passphrase) => new AccessFile(_folder).Write(new AccessState(AccessState.CurrentSchema, SecretHash.Of(passphrase, 10), null));

    private string Offer(TimeSpan stands)
    {
        string code = PassphraseWords.Code();
        new AccessFile(_folder).Write(new AccessState(
            AccessState.CurrentSchema, null, new OneTimeCode(SecretHash.Of(code, 10), (_clock.GetUtcNow() + stands).ToUnixTimeMilliseconds())));
        return code;
    }
}
