using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PileController.Panel.Assets;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Guard;

public class SessionApiTests
{
    private const string Passphrase = "warm chips in january";

    [Fact]
    public async Task Session_WithoutAPassphraseSet_NeedsNoneAndMaySteer()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement session = await host.GetAsync("/api/session");
        using HttpResponseMessage changed = await host.Client.PostAsync("/api/servicing", null);
        using HttpResponseMessage signed = await host.Client.PostAsJsonAsync("/api/session", new { passphrase = "anything at all" });

        Assert.False(session.GetProperty("needsPassphrase").GetBoolean());
        Assert.True(session.GetProperty("maySteer").GetBoolean());
        Assert.Equal(HttpStatusCode.Accepted, changed.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, signed.StatusCode);
    }

    [Fact]
    public async Task SignIn_Right_GivesACookieNoScriptCanReadAndATokenThatIsNeeded()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        using HttpResponseMessage answer = await host.Client.PostAsJsonAsync("/api/session", new { passphrase = Passphrase, name = "Robin" });
        JsonElement session = await answer.Content.ReadFromJsonAsync<JsonElement>();
        string cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        string token = session.GetProperty("token").GetString()!;
        host.Client.DefaultRequestHeaders.Add("Origin", host.Address);

        using HttpResponseMessage without = await host.Client.PostAsync("/api/servicing", null);
        host.Client.DefaultRequestHeaders.Add("X-Pile-Token", token);
        using HttpResponseMessage with = await host.Client.PostAsync("/api/servicing", null);

        Assert.Equal("Robin", session.GetProperty("name").GetString());
        Assert.StartsWith("pile-session=", cookie);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(token, cookie, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, without.StatusCode);
        Assert.Contains("X-Pile-Token", await without.Content.ReadAsStringAsync());
        Assert.Equal(HttpStatusCode.Accepted, with.StatusCode);
        Assert.Equal(token, (await host.GetAsync("/api/session")).GetProperty("token").GetString());
    }

    [Fact]
    public async Task SignIn_Wrong_IsRefusedAndTheNextTryMustWait()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);

        using HttpResponseMessage wrong = await host.Client.PostAsJsonAsync("/api/session", new { passphrase = "not this one" });
        using HttpResponseMessage soon = await host.Client.PostAsJsonAsync("/api/session", new { passphrase = Passphrase });

        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        Assert.False(wrong.Headers.Contains("Set-Cookie"));
        Assert.Equal(HttpStatusCode.TooManyRequests, soon.StatusCode);
        Assert.Equal(TimeSpan.FromSeconds(1), soon.Headers.RetryAfter!.Delta);
        Assert.DoesNotContain("not this one", await wrong.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task SignOut_TheCookieSentAgain_OpensNothing()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        (string cookie, string token) = await SignInAsync(host);
        Assert.Equal(HttpStatusCode.Accepted, await PostAsync(host, "/api/servicing", cookie, token));

        Assert.Equal(HttpStatusCode.NoContent, await SendAsync(host, HttpMethod.Delete, "/api/session", cookie, token));

        Assert.Equal(HttpStatusCode.Unauthorized, await PostAsync(host, "/api/servicing", cookie, token));
    }

    [Theory]
    [InlineData("X-Nothing", "x", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "none", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "same-origin", HttpStatusCode.Accepted)]
    public async Task Change_WithASessionThatDoesNotSayWhereItComesFrom_IsRefused(string name, string value, HttpStatusCode expected)
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        (string cookie, string token) = await SignInAsync(host);

        Assert.Equal(expected, await SendAsync(host, HttpMethod.Post, "/api/servicing", cookie, token, (name, value)));
        Assert.Equal(HttpStatusCode.OK, await SendAsync(host, HttpMethod.Get, "/api/session", cookie, token, ("X-Nothing", "x")));
    }

    [Fact]
    public async Task SignOut_Everywhere_EndsEverySession()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        (string phone, string phoneToken) = await SignInAsync(host);
        (string desk, string deskToken) = await SignInAsync(host);

        Assert.Equal(HttpStatusCode.NoContent, await SendAsync(host, HttpMethod.Delete, "/api/sessions", desk, deskToken));

        Assert.Equal(HttpStatusCode.Unauthorized, await PostAsync(host, "/api/servicing", phone, phoneToken));
        Assert.Equal(HttpStatusCode.Unauthorized, await PostAsync(host, "/api/servicing", desk, deskToken));
    }

    [Fact]
    public async Task SignOut_Everywhere_IsNotForThoseWhoAreNotIn()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        (string cookie, string token) = await SignInAsync(host);

        Assert.Equal(HttpStatusCode.Unauthorized, await SendAsync(host, HttpMethod.Delete, "/api/sessions", null, null));
        Assert.Equal(HttpStatusCode.Forbidden, await SendAsync(host, HttpMethod.Delete, "/api/sessions", cookie, null));

        Assert.Equal(HttpStatusCode.Accepted, await PostAsync(host, "/api/servicing", cookie, token));
    }

    [Theory]
    [InlineData("look", HttpStatusCode.Forbidden, HttpStatusCode.Forbidden)]
    [InlineData("forecast", HttpStatusCode.Accepted, HttpStatusCode.Forbidden)]
    [InlineData("steer", HttpStatusCode.Accepted, HttpStatusCode.Accepted)]
    public async Task Token_OfAScope_DoesWhatItsScopeSaysUntilTakenBack(string scope, HttpStatusCode forecast, HttpStatusCode steer)
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        await host.SignInAsync(Passphrase);
        using HttpResponseMessage made = await host.Client.PostAsJsonAsync("/api/tokens", new { name = "script", scopes = new[] { scope } });
        string token = (await made.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("token").GetString()!;
        using HttpClient script = new() { BaseAddress = host.Client.BaseAddress };
        script.DefaultRequestHeaders.Authorization = new("Bearer", token);
        object told = new { fromUtc = "2013-01-28T05:00:00Z", outsideC = new[] { 1.0 } };

        using HttpResponseMessage forecasted = await script.PostAsJsonAsync("/api/forecast", told);
        using HttpResponseMessage steered = await script.PostAsync("/api/servicing", null);
        using HttpResponseMessage minted = await script.PostAsJsonAsync("/api/tokens", new { name = "more", scopes = new[] { "steer" } });
        JsonElement listed = Assert.Single((await host.GetAsync("/api/tokens")).EnumerateArray());
        using HttpResponseMessage taken = await host.Client.DeleteAsync("/api/tokens?name=script");
        using HttpResponseMessage after = await script.GetAsync("/api/now");

        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        Assert.Equal(forecast, forecasted.StatusCode);
        Assert.Equal(steer, steered.StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, minted.StatusCode);
        Assert.NotEqual(JsonValueKind.Null, listed.GetProperty("usedUtcMs").ValueKind);
        Assert.False(listed.TryGetProperty("token", out _));
        Assert.Equal(HttpStatusCode.NoContent, taken.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
    }

    [Fact]
    public async Task Journal_OfChanges_SaysWhoFromWhereAndWhat()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        await host.SignInAsync(Passphrase);
        await host.Client.PostAsJsonAsync("/api/hand", new { actuator = "pump", value = 1, minutes = 10, who = "another name" });

        JsonElement[] lines = [.. (await host.GetAsync("/api/access")).EnumerateArray()];

        JsonElement hand = Assert.Single(lines, line => line.GetProperty("what").GetString() == "POST /api/hand");
        Assert.Equal("Robin", hand.GetProperty("who").GetString());
        Assert.Equal("this machine", hand.GetProperty("from").GetString());
        Assert.Equal("session", hand.GetProperty("by").GetString());
        Assert.True(hand.GetProperty("done").GetBoolean());
        Assert.Single(lines, line => line.GetProperty("what").GetString() == "POST /api/session" && line.GetProperty("done").GetBoolean());
    }

    [Fact]
    public async Task Journal_WithoutASession_TellsTheNameGivenWithTheChange()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        await host.Client.PostAsJsonAsync("/api/hand", new { actuator = "pump", value = 1, minutes = 10, who = "Robin" });

        JsonElement line = Assert.Single((await host.GetAsync("/api/access")).EnumerateArray());

        Assert.Equal("Robin", line.GetProperty("who").GetString());
        Assert.Equal("loopback", line.GetProperty("by").GetString());
    }

    [Fact]
    public async Task Journal_OfAnyChangeThereIs_HasItsWordOnThePage()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        string words = PanelAssets.TextOf("/js/words/access.js");

        Assert.All(
            host.Routes().Where(route => route.Method != "GET"),
            route => Assert.Contains($"  \"{route.Method} {route.Path}\": \"", words, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Journal_AndKeys_TellTheirMomentsByThePlacesOffset()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        await host.SignInAsync(Passphrase);
        using HttpResponseMessage made = await host.Client.PostAsJsonAsync("/api/tokens", new { name = "script", scopes = new[] { "look" } });

        JsonElement[] told = [.. (await host.GetAsync("/api/access")).EnumerateArray(), .. (await host.GetAsync("/api/tokens")).EnumerateArray()];

        Assert.Equal(3, told.Length);
        Assert.All(told, line => Assert.Equal(PanelHost.OffsetMinutes, line.GetProperty("offsetMinutes").GetInt32()));
    }

    [Fact]
    public async Task Journal_AndKeys_AreNotForThoseWhoOnlyLook()
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        foreach (string path in (string[])["/api/access", "/API/ACCESS", "/api/tokens", "/api//access", "/Api/Tokens/"])
        {
            using HttpResponseMessage answer = await host.Client.GetAsync(path);

            Assert.True(answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.NotFound, $"{path}: {answer.StatusCode}");
        }

        using HttpResponseMessage looked = await host.Client.GetAsync("/api/now");
        Assert.Equal(HttpStatusCode.OK, looked.StatusCode);
    }

    [Theory]
    [InlineData("{\"name\":\"x\",\"scopes\":[]}", "scopes")]
    [InlineData("{\"name\":\"x\",\"scopes\":[\"none\"]}", "scopes")]
    [InlineData("{\"name\":\"x\",\"scopes\":[\"all\"]}", "scopes")]
    [InlineData("{\"name\":\"x\",\"scopes\":\"steer\"}", "scopes")]
    [InlineData("{\"name\":\"x\"}", "scopes")]
    [InlineData("{\"scopes\":[\"look\"]}", "name")]
    [InlineData("{\"name\":\"x\",\"scopes\":[\"look\"],\"more\":1}", "more")]
    public async Task Token_WrongField_IsNamed(string body, string field)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using StringContent content = new(body, System.Text.Encoding.UTF8, "application/json");

        using HttpResponseMessage answer = await host.Client.PostAsync("/api/tokens", content);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains($"\"field\":\"{field}\"", await answer.Content.ReadAsStringAsync());
    }

    internal static async Task<(string Cookie, string Token)> SignInAsync(PanelHost host)
    {
        using HttpClient client = Bare(host);
        using HttpResponseMessage answer = await client.PostAsJsonAsync("/api/session", new { passphrase = Passphrase });
        JsonElement session = await answer.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>();
        return (Assert.Single(answer.Headers.GetValues("Set-Cookie")).Split(';')[0], session.GetProperty("token").GetString()!);
    }

    internal static Task<HttpStatusCode> PostAsync(PanelHost host, string path, string? cookie, string? token) => SendAsync(host, HttpMethod.Post, path, cookie, token);

    private static async Task<HttpStatusCode> SendAsync(
        PanelHost host, HttpMethod method, string path, string? cookie, string? token, (string Name, string Value)? site = null)
    {
        using HttpClient client = Bare(host);
        using HttpRequestMessage request = new(method, path);
        (string name, string value) = site ?? ("Origin", host.Address);
        request.Headers.TryAddWithoutValidation(name, value);
        if (cookie is not null)
        {
            request.Headers.Add("Cookie", cookie);
        }

        if (token is not null)
        {
            request.Headers.Add("X-Pile-Token", token);
        }

        using HttpResponseMessage answer = await client.SendAsync(request);
        return answer.StatusCode;
    }

    private static HttpClient Bare(PanelHost host) =>
        new(new HttpClientHandler { UseCookies = false }) { BaseAddress = host.Client.BaseAddress };
}
