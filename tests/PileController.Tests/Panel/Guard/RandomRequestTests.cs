using System.Net;
using System.Text;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Guard;

/// <summary>Ten thousand requests made by chance over every route: none breaks the program, none tells what it should not.</summary>
public class RandomRequestTests
{
    private const string Passphrase = "warm chips in january";
    private const int Requests = 10_000;

    private static readonly string[] Words =
    [
        "", "0", "-1", "1e9", "NaN", "null", "true", "x", "house", "pump", "leak", "heapCore", "9999999999999999999", "2026-01-30", "2026-13-45T99:00Z",
        "<script>alert(1)</script>", "' OR 1=1 --", "../../etc/passwd", "%00", "°C", "\ud83c\udf31", "🌱🌱🌱", "a\nb", new string('y', 3000), "[]", "{}", "0.5", "600", "look", "steer",
    ];

    private static readonly string[] Keys =
    [
        "channel", "from", "to", "step", "kind", "limit", "before", "text", "mode", "page", "turns", "radiusM", "heapRadiusM", "coverM", "units", "season", "name",
        "actuator", "value", "minutes", "who", "size", "seasons", "passphrase", "code", "scopes", "fromUtc", "outsideC", "sunWPerM2", "act", "kilograms", "way", "known", "count", "priceEach", "origin",
    ];

    private static readonly string[] Methods = ["GET", "POST", "DELETE", "PUT", "PATCH", "HEAD", "OPTIONS", "TRACE", "FOO"];

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    public async Task Requests_ByChanceOverEveryRoute_BreakAndLeakNothing(int seed, bool open)
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: open ? null : Passphrase);
        (string Method, string Path)[] routes = [.. host.Routes()];
        Random random = new(seed);
        string[] secrets = ["   at PileController", "Exception", "Microsoft.AspNetCore", Passphrase, host.Folder];
        List<HttpRequestMessage> requests = [.. Enumerable.Range(0, Requests / 2).Select(_ => Make(random, routes, host.Address))];
        await Parallel.ForEachAsync(requests, new ParallelOptions { MaxDegreeOfParallelism = 8 }, async (request, stop) =>
        {
            string said = $"{request.Method} {request.RequestUri}";
            using HttpResponseMessage answer = await host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop);
            Assert.True((int)answer.StatusCode is < 500 or 503, $"{said}: {answer.StatusCode}");
            if (answer.Content.Headers.ContentType?.MediaType == "text/event-stream")
            {
                return;
            }

            string body = await answer.Content.ReadAsStringAsync(stop);
            if (answer.StatusCode == HttpStatusCode.OK && request.RequestUri!.OriginalString.EndsWith(".js", StringComparison.Ordinal))
            {
                return;
            }

            Assert.All(secrets, secret => Assert.False(body.Contains(secret, StringComparison.Ordinal), $"{said} tells \"{secret}\": {body}"));
            Assert.True(answer.Content.Headers.ContentType?.MediaType is not "text/html" || !body.Contains("<script>alert(1)", StringComparison.Ordinal), said);
        });

        await host.NextTickAsync();
    }

    private static HttpRequestMessage Make(Random random, (string Method, string Path)[] routes, string address)
    {
        (string own, string path) = routes[random.Next(routes.Length)];
        string method = random.Next(4) == 0 ? Pick(random, Methods) : own;
        path = path.Replace("{id}", Uri.EscapeDataString(Pick(random, Words)), StringComparison.Ordinal);
        path = random.Next(8) switch
        {
            0 => path + "/" + Uri.EscapeDataString(Pick(random, Words)),
            1 => path.ToUpperInvariant(),
            _ => path,
        };
        string query = string.Join('&', Enumerable.Range(0, random.Next(4)).Select(_ => $"{Pick(random, Keys)}={Uri.EscapeDataString(Cut(Pick(random, Words)))}"));
        HttpRequestMessage request = new(new HttpMethod(method), address + path + (query.Length > 0 ? $"?{query}" : ""));
        if (method is not ("GET" or "HEAD" or "TRACE") && random.Next(5) > 0)
        {
            request.Content = new StringContent(Body(random), Encoding.UTF8, random.Next(6) == 0 ? "text/plain" : "application/json");
        }

        foreach ((string name, string[] values) in ((string, string[])[])
            [
                ("Origin", ["null", "http://evil.example.org"]), ("Host", ["evil.example.org"]), ("Authorization", ["Bearer x", "Basic eDp5", ""]),
                ("Cookie", ["pile-session=x", "=;;="]), ("X-Pile-Token", ["x", ""]), ("Sec-Fetch-Site", ["cross-site", "same-origin"]),
                ("Accept-Encoding", ["br", "gzip"]), ("If-None-Match", ["\"x\"", "*"]), ("Range", ["bytes=0-1", "bytes=99999999-"]),
            ])
        {
            if (random.Next(12) == 0)
            {
                request.Headers.TryAddWithoutValidation(name, Pick(random, values));
            }
        }

        return request;
    }

    private static string Body(Random random) => random.Next(8) switch
    {
        0 => "",
        1 => Pick(random, Words),
        2 => new string('[', random.Next(200)),
        _ => "{" + string.Join(',', Enumerable.Range(0, random.Next(7)).Select(_ => $"\"{Pick(random, Keys)}\":{Value(random)}")) + "}",
    };

    private static string Value(Random random) => random.Next(5) switch
    {
        0 => random.Next(-5, 2000).ToString(System.Globalization.CultureInfo.InvariantCulture),
        1 => "[" + random.Next(100) + ",\"x\"]",
        2 => "null",
        3 => "1e400",
        _ => System.Text.Json.JsonSerializer.Serialize(Pick(random, Words)),
    };

    private static string Cut(string text) => text.Length > 300 ? text[..300] : text;

    private static string Pick(Random random, string[] from) => from[random.Next(from.Length)];
}
