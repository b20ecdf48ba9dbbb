using System.Net;
using System.Text;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Guard;

public class RequestGateTests
{
    [Theory]
    [InlineData("Host", "pile.example.org")]
    [InlineData("Host", "127.0.0.1.example.org")]
    [InlineData("Host", "192.168.1.4")]
    [InlineData("Origin", "http://evil.example.org")]
    [InlineData("Origin", "null")]
    public async Task Request_ForeignHostOrOrigin_IsRefusedEvenForReading(string header, string value)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        foreach (string path in (string[])["/", "/api/now", "/healthz", "/js/main.js"])
        {
            using HttpRequestMessage request = new(HttpMethod.Get, path);
            request.Headers.TryAddWithoutValidation(header, value);

            using HttpResponseMessage answer = await host.Client.SendAsync(request);

            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
            Assert.Contains(header, await answer.Content.ReadAsStringAsync());
        }
    }

    [Fact]
    public async Task Request_OwnOrigin_ComesIn()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/servicing");
        request.Headers.Add("Origin", host.Address);
        request.Headers.Add("Sec-Fetch-Site", "same-origin");

        using HttpResponseMessage answer = await host.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
    }

    [Fact]
    public async Task Change_FromAnotherSite_IsRefused()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpRequestMessage request = new(HttpMethod.Delete, "/api/hand");
        request.Headers.Add("Sec-Fetch-Site", "cross-site");

        using HttpResponseMessage answer = await host.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task Change_WithAFormsType_IsRefused()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using StringContent body = new("{\"actuator\":\"pump\",\"value\":1,\"minutes\":10,\"who\":\"x\"}", Encoding.UTF8, "text/plain");

        using HttpResponseMessage answer = await host.Client.PostAsync("/api/hand", body);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Contains("application/json", await answer.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("cross-site", true)]
    [InlineData("same-site", true)]
    [InlineData(null, true)]
    [InlineData("none", false)]
    [InlineData("same-origin", false)]
    public async Task Page_ThatAnotherSiteMayHold_IsCutOffFromIt(string? site, bool cutOff)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpRequestMessage request = new(HttpMethod.Get, "/");
        request.Headers.Add("Sec-Fetch-Site", site is null ? [] : [site]);

        using HttpResponseMessage answer = await host.Client.SendAsync(request);

        Assert.Equal(cutOff ? ["same-origin"] : [], answer.Headers.TryGetValues("Cross-Origin-Opener-Policy", out IEnumerable<string>? policy) ? policy : []);
    }

    [Fact]
    public async Task Answer_AnyPath_CarriesTheSecurityHeaders()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        foreach (string path in (string[])["/", "/api/now", "/no-such-thing"])
        {
            using HttpResponseMessage answer = await host.Client.GetAsync(path);

            string policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));

            // The page itself may hold one style and one script, known by their hashes.
            string hash = path == "/" ? " 'sha256-[A-Za-z0-9+/]{43}='" : string.Empty;
            Assert.Matches($"^default-src 'none'; script-src 'self'{hash}; style-src 'self'{hash};", policy);
            Assert.DoesNotContain("unsafe", policy);
            Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
            Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
            Assert.False(answer.Headers.Contains("Server"));
        }

        using HttpResponseMessage now = await host.Client.GetAsync("/api/now");
        Assert.True(now.Headers.CacheControl!.NoStore);
    }

    [Theory]
    [InlineData("/js/main.js")]
    [InlineData("/css/base.css")]
    public async Task Answer_ThatIsNoDocument_IsTakenForNothingElseAndByNobodyElse(string path)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync(path);

        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Resource-Policy")));
        Assert.False(answer.Headers.Contains("Content-Security-Policy"));
    }

    [Fact]
    public async Task Body_OverTheLimit_IsRefused()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using StringContent body = new($"{{\"who\":\"{new string('x', 20_000)}\"}}", Encoding.UTF8, "application/json");

        using HttpResponseMessage answer = await host.Client.PostAsync("/api/hand", body);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }
}
