using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.Time.Testing;
using PileController.Access;
using PileController.Control.Decisions;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Guard;

/// <summary>What an attacker may try: all refused, all in the journal, the ticks on time meanwhile.</summary>
public class AttackTests
{
    private const string Passphrase = "warm chips in january";

    // The page's own calls that open a session, and its files: what there is without one.
    private static readonly string[] Open = ["POST /api/session", "POST /api/session/passphrase", "DELETE /api/session"];

    [Fact]
    public async Task Change_OnEveryRouteWithoutASession_IsRefusedAndRecorded()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        string[] changes = [.. host.Routes().Where(r => r.Method != "GET").Select(r => $"{r.Method} {r.Path}").Except(Open)];
        Assert.True(changes.Length >= 13, string.Join(", ", changes));
        foreach (string change in changes)
        {
            foreach (string? bearer in (string?[])[null, "pile_forged"])
            {
                using HttpRequestMessage request = new(new HttpMethod(change.Split(' ')[0]), change.Split(' ')[1].Replace("{id}", "leak", StringComparison.Ordinal));
                request.Headers.Authorization = bearer is null ? null : new("Bearer", bearer);
                using HttpResponseMessage answer = await host.Client.SendAsync(request);

                Assert.True(answer.StatusCode == HttpStatusCode.Unauthorized, $"{change}: {answer.StatusCode}");
                Assert.NotEmpty(answer.Headers.WwwAuthenticate);
            }
        }

        IReadOnlyList<JournalEntry> lines = host.Access.Journal.Newest(400);
        Assert.All(changes.Take(20), change => Assert.Contains(lines, line => line.What == change && !line.Done));
        Assert.DoesNotContain(host.Control.Seen.SelectMany(commands => commands), command => command is not ReportTick);
    }

    [Fact]
    public async Task Change_WithASessionAndAForgedTokenOrOrigin_IsRefusedOnEveryRoute()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        await host.SignInAsync(Passphrase);
        string token = host.Client.DefaultRequestHeaders.GetValues("X-Pile-Token").Single();
        host.Client.DefaultRequestHeaders.Remove("X-Pile-Token");
        foreach ((string method, string path) in host.Routes().Where(r => r.Method != "GET" && r.Path is not ("/api/session" or "/api/session/passphrase")))
        {
            foreach ((string name, string? value)[] headers in ((string, string?)[][])
                [
                    [("X-Pile-Token", null)],
                    [("X-Pile-Token", token[..^1] + (token[^1] == 'A' ? 'B' : 'A'))],
                    [("X-Pile-Token", token), ("Origin", "http://evil.example.org")],
                    [("X-Pile-Token", token), ("Origin", "null")],
                    [("X-Pile-Token", token), ("Host", "evil.example.org")],
                    [("X-Pile-Token", token), ("Sec-Fetch-Site", "same-site")],
                ])
            {
                using HttpRequestMessage request = new(new HttpMethod(method), path.Replace("{id}", "leak", StringComparison.Ordinal));
                foreach ((string name, string? value) in headers.Where(h => h.value is not null))
                {
                    request.Headers.TryAddWithoutValidation(name, value);
                }

                using HttpResponseMessage answer = await host.Client.SendAsync(request);
                Assert.True(answer.StatusCode == HttpStatusCode.Forbidden, $"{method} {path} {string.Join(", ", headers)}: {answer.StatusCode}");
            }
        }

        Assert.DoesNotContain(host.Control.Seen.SelectMany(commands => commands), command => command is not ReportTick);
    }

    [Fact]
    public async Task Storm_OfWrongPassphrases_IsRefusedWhileTicksAndSessionsGoOn()
    {
        // Hashes as slow as real ones.
        await using PanelHost host = await PanelHost.StartAsync(true, 60, null, access => access with { ForThisRun = new(SecretHash.Of(Passphrase)) });
        await host.SignInAsync(Passphrase);
        long before = host.Feed.Latest!.Sequence;

        ConcurrentBag<HttpStatusCode> storm = [];
        await Parallel.ForAsync(0, 1500, new ParallelOptions { MaxDegreeOfParallelism = 64 }, async (i, _) => storm.Add(await TryAsync(host, $"wrong passphrase {i}")));
        using HttpResponseMessage mine = await host.Client.PostAsync("/api/servicing", null);
        await host.NextTickAsync();

        Assert.All(storm, status => Assert.True(status is HttpStatusCode.Unauthorized or HttpStatusCode.TooManyRequests, $"{status}"));
        Assert.Contains(HttpStatusCode.TooManyRequests, storm);
        Assert.Equal(HttpStatusCode.Accepted, mine.StatusCode);
        Assert.True(host.Feed.Latest!.Sequence > before);
        using JsonDocument health = JsonDocument.Parse(await host.Client.GetStringAsync("/healthz"));
        Assert.True(health.RootElement.GetProperty("healthy").GetBoolean());
        IReadOnlyList<JournalEntry> lines = host.Access.Journal.Newest(400);
        Assert.Equal(1500, lines.Where(line => line.What == "POST /api/session" && !line.Done).Sum(line => line.Times));
        Assert.All(lines, line => Assert.DoesNotContain("wrong passphrase", JsonSerializer.Serialize(line), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Storm_AsLongAsNoTimePasses_CostsOneHashAndAnotherOnlyAfterADelayThatGrows()
    {
        FakeTimeProvider clock = new(PanelHost.Begins);
        int hashes = 0;
        await using PanelHost host = await PanelHost.StartAsync(true, 60, Passphrase, access => access with
        {
            Clock = clock,
            Fits = (_, _) => Interlocked.Increment(ref hashes) < 0,
        });
        Task Storm() => Parallel.ForAsync(0, 40, new ParallelOptions { MaxDegreeOfParallelism = 8 }, async (i, _) => await TryAsync(host, $"wrong passphrase {i}"));

        await Storm();
        Assert.Equal(1, hashes);
        for (int failures = 1; failures <= 4; failures++)
        {
            clock.Advance(TimeSpan.FromSeconds(1 << (failures - 1)) - TimeSpan.FromMilliseconds(1));
            await Storm();
            Assert.Equal(failures, hashes);

            clock.Advance(TimeSpan.FromMilliseconds(1));
            await Storm();
            Assert.Equal(failures + 1, hashes);
        }
    }

    [Fact]
    public async Task Body_TooLargeOrMalformed_IsRefusedOnEveryRouteAndRecorded()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        string[] malformed = ["", "{", "[]", "null", "\"x\"", "{\"who\":", "{\"a\":{\"a\":{\"a\":{\"a\":{}}}}}", "\u0000", "{\"who\":\"\\ud800\"}", "{\"passphrase\":[1]}"];
        string large = $"{{\"who\":\"{new string('x', 20_000)}\"}}";
        foreach ((string method, string path) in host.Routes().Where(r => r.Method == "POST" && r.Path is not "/api/servicing" && !r.Path.EndsWith("/clear", StringComparison.Ordinal)))
        {
            foreach (string text in malformed)
            {
                using StringContent body = new(text, Encoding.UTF8, "application/json");
                using HttpResponseMessage answer = await host.Client.PostAsync(path, body);
                Assert.True((int)answer.StatusCode is 400 or 409, $"{method} {path} {text}: {answer.StatusCode}");
            }

            using StringContent big = new(large, Encoding.UTF8, "application/json");
            using HttpResponseMessage refused = await host.Client.PostAsync(path, big);
            Assert.True(refused.StatusCode == HttpStatusCode.RequestEntityTooLarge, $"{method} {path}: {refused.StatusCode}");
        }

        Assert.Contains(host.Access.Journal.Newest(400), line => line.Status == 413);
        Assert.DoesNotContain(host.Control.Seen.SelectMany(commands => commands), command => command is not ReportTick);
    }

    [Fact]
    public async Task Body_TooLarge_LeavesNoTraceInTheLogAndItsRouteInTheJournal()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        for (int i = 0; i < 3; i++)
        {
            using StringContent big = new($"{{\"passphrase\":\"{new string('x', 20_000)}\"}}", Encoding.UTF8, "application/json");
            using HttpResponseMessage refused = await host.Client.PostAsync("/api/session", big);
            Assert.Equal(HttpStatusCode.RequestEntityTooLarge, refused.StatusCode);
        }

        Assert.Empty(host.Log.Lines);
        IReadOnlyList<JournalEntry> lines = host.Access.Journal.Newest(10);
        Assert.Equal(3, lines.Where(line => line is { What: "POST /api/session", Status: 413, Done: false }).Sum(line => line.Times));
        Assert.DoesNotContain(lines, line => line.What.Contains("unknown", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Path_Tricked_ReachesNoFileOfTheData()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        await host.SignInAsync(Passphrase);
        string secret = await File.ReadAllTextAsync(Path.Combine(host.Folder, KeyRing.Name));
        string[] tricks =
        [
            "/access.json", "/access-keys.json", "/access.jsonl", "/ledger.json", "/../access-keys.json", "/..%2faccess-keys.json", "/js/../../access-keys.json",
            "/%2e%2e/access-keys.json", "/js/%2e%2e%2f%2e%2e%2faccess-keys.json", "/..\\access-keys.json", "/%5c..%5caccess-keys.json", "//access-keys.json",
            "/js/main.js%00.json", "/js/main.js/..", "/.%00./access-keys.json", $"/{host.Folder}/access-keys.json", $"/%2f{host.Folder[1..]}/access-keys.json",
            "/api/../access-keys.json", "/wwwroot/index.html", "/appsettings.json", "/PileController.dll", "/proc/self/environ",
        ];
        foreach (string trick in tricks)
        {
            string answer = await RawAsync(host, $"GET {trick} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");

            Assert.True(answer.StartsWith("HTTP/1.1 404", StringComparison.Ordinal) || answer.StartsWith("HTTP/1.1 400", StringComparison.Ordinal), $"{trick}: {answer}");
            Assert.DoesNotContain(secret[..40], answer, StringComparison.Ordinal);
        }

        IReadOnlyList<JournalEntry> lines = host.Access.Journal.Newest(400);
        Assert.Contains(lines, line => line is { What: "GET an unknown path", Status: 404 });
        Assert.Contains(lines, line => line.What == "a malformed request");
    }

    [Theory]
    [InlineData("GARBAGE\r\n\r\n")]
    [InlineData("GET / HTTP/9.9\r\nHost: localhost\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost: localhost\r\nHost: other\r\n\r\n")]
    [InlineData("POST /api/hand HTTP/1.1\r\nHost: localhost\r\nContent-Length: 4\r\nContent-Length: 5\r\n\r\nabcd")]
    [InlineData("GET /a b HTTP/1.1\r\nHost: localhost\r\n\r\n")]
    [InlineData("GET / HTTP/1.1\r\nHost: localhost\r\nX: a\0b\r\n\r\n")]
    public async Task Request_Malformed_IsRefusedAndRecorded(string request)
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);

        string answer = await RawAsync(host, request);

        Assert.Matches("^HTTP/1.1 (400|505)", answer);
        Assert.Contains(host.Access.Journal.Newest(10), line => line.What == "a malformed request");
    }

    [Fact]
    public async Task Head_TooLarge_IsRefused()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);

        string answer = await RawAsync(host, $"GET / HTTP/1.1\r\nHost: localhost\r\nX: {new string('x', 20_000)}\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 431", answer);
        Assert.Contains(host.Access.Journal.Newest(10), line => line.Status == 431);
    }

    [Fact]
    public async Task Connections_FiveHundredThatSayNothing_KeepNobodyOut()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        await host.SignInAsync(Passphrase);
        List<TcpClient> slow = [];
        try
        {
            for (int i = 0; i < 500; i++)
            {
                TcpClient one = new();
                slow.Add(one);
                await one.ConnectAsync(host.Client.BaseAddress!.Host, host.Client.BaseAddress.Port);
                await one.GetStream().WriteAsync("GET /api/now HTTP/1.1\r\nHost: local"u8.ToArray());
            }

            using HttpClient newcomer = new() { BaseAddress = host.Client.BaseAddress };
            using HttpResponseMessage looked = await newcomer.GetAsync("/api/now");
            using HttpResponseMessage steered = await host.Client.PostAsync("/api/servicing", null);
            await host.NextTickAsync();

            Assert.Equal(HttpStatusCode.OK, looked.StatusCode);
            Assert.Equal(HttpStatusCode.Accepted, steered.StatusCode);
            JournalEntry line = Assert.Single(host.Access.Journal.Newest(400), line => line.What == "a connection");
            Assert.InRange(line.Times, 300, 500);
        }
        finally
        {
            slow.ForEach(one => one.Dispose());
        }
    }

    [Fact]
    public async Task Viewers_AHundredAtOnce_AllHaveTheStream()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        using HttpClient client = new(new SocketsHttpHandler { MaxConnectionsPerServer = 200 }) { BaseAddress = host.Client.BaseAddress };
        HttpResponseMessage[] viewers = await Task.WhenAll(Enumerable.Range(0, 100).Select(_ =>
            client.GetAsync("/api/stream", HttpCompletionOption.ResponseHeadersRead)));

        foreach (HttpResponseMessage viewer in viewers)
        {
            using StreamReader reader = new(await viewer.Content.ReadAsStreamAsync());
            Assert.StartsWith("event: now", await reader.ReadLineAsync());
            viewer.Dispose();
        }
    }

    private static async Task<HttpStatusCode> TryAsync(PanelHost host, string passphrase)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/session") { Content = JsonContent.Create(new { passphrase }) };
        using HttpClient client = new(new HttpClientHandler { UseCookies = false }) { BaseAddress = host.Client.BaseAddress };
        using HttpResponseMessage answer = await client.SendAsync(request);
        return answer.StatusCode;
    }

    private static async Task<string> RawAsync(PanelHost host, string request)
    {
        using TcpClient client = new();
        await client.ConnectAsync(host.Client.BaseAddress!.Host, host.Client.BaseAddress.Port);
        await client.GetStream().WriteAsync(Encoding.Latin1.GetBytes(request));
        using StreamReader reader = new(client.GetStream(), Encoding.Latin1);
        return await reader.ReadToEndAsync();
    }
}
