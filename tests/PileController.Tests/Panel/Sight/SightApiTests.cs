using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using PileController.Access;
using PileController.Control.Readings;
using PileController.Panel.Now;
using PileController.Panel.Sight;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Sight;

public partial class SightApiTests
{
    private const string Passphrase = "warm chips in january";

    [Theory]
    [InlineData("/")]
    [InlineData("/index.html")]
    public async Task Page_WhereOneMayLook_HoldsTheMomentAsTextAndAsData(string path)
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        JsonElement now = await host.GetAsync("/api/now");

        using HttpResponseMessage answer = await host.Client.GetAsync(path);
        string page = await answer.Content.ReadAsStringAsync();
        string text = WebUtility.HtmlDecode(page).Replace('\u00a0', ' ').Replace('\u202f', ' ');

        Assert.Equal("text/html", answer.Content.Headers.ContentType!.MediaType);
        Assert.True(answer.Headers.CacheControl is { NoStore: true, Private: true });
        Assert.Null(answer.Headers.ETag);
        Assert.Contains(now.GetProperty("why").GetString()!, text, StringComparison.Ordinal);
        Assert.Contains("House close to its minimum", text, StringComparison.Ordinal);
        Assert.Contains("Heap is well", text, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"<span>{now.GetProperty("estimate").GetProperty("activeZoneC").GetDouble():F1}</span><span class=\"unit\">°C</span>"), text, StringComparison.Ordinal);
        Assert.Matches("Draws [0-9]{1,3}( [0-9]{3})* W", text);
        Assert.Contains("<title>Alder Bank</title>", text, StringComparison.Ordinal);
        Assert.Contains("Demo: Alder Bank, an invented holding. Its clock runs as fast as yours.", text, StringComparison.Ordinal);
        Assert.Matches("As of Mon 28 Jan, 00:1[0-9]:[0-9]{2}<", text);
        JsonElement told = JsonDocument.Parse(Told().Match(page).Groups["json"].Value).RootElement;
        Assert.Equal(now.GetProperty("sequence").GetInt64(), told.GetProperty("sequence").GetInt64());
        Assert.DoesNotMatch(@"\{\w+\}", page);
    }

    [Fact]
    public async Task Page_OfAHouseThatIsTooWarm_SaysSoAsTheTickDoes()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Rig.Reads = at => MadeUp.Readings(at).With(Channel.House, Reading.FromValue(Channel.House, 50.1));
        await host.NextTickAsync();

        JsonElement judged = (await host.GetAsync("/api/now")).GetProperty("judged");
        string page = await host.Client.GetStringAsync("/");

        Assert.Equal(("hot", "bad"), (judged.GetProperty("house").GetString(), judged.GetProperty("houseTone").GetString()));
        Assert.Contains("<span>House is too warm</span>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("House is safe", page[page.IndexOf("<main", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("american", "°F")]
    [InlineData("metric", "°C")]
    [InlineData("furlongs", "°C")]
    public async Task Page_UnitsOfTheBrowser_AreThoseOfTheText(string chosen, string unit)
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        using HttpRequestMessage ask = new(HttpMethod.Get, "/");
        ask.Headers.Add("Cookie", $"units={chosen}");

        using HttpResponseMessage answer = await host.Client.SendAsync(ask);

        Assert.Contains($"<span class=\"unit\">{unit}</span>", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("scheme=light", "light")]
    [InlineData("scheme=dark", "dark")]
    [InlineData("scheme=system", "light dark")]
    [InlineData("scheme=\"><script>", "light dark")]
    [InlineData("units=metric", "light dark")]
    public async Task Page_ColoursOfTheBrowser_AreThoseOfItsHead(string cookie, string scheme)
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        using HttpRequestMessage ask = new(HttpMethod.Get, "/");
        ask.Headers.Add("Cookie", cookie);

        using HttpResponseMessage answer = await host.Client.SendAsync(ask);

        Assert.Contains($"<meta name=\"color-scheme\" content=\"{scheme}\">", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public void Page_WithoutFigures_HasTheChosenColoursToo()
    {
        string page = new SightPage(new PileController.Panel.Assets.PanelAssets()).Empty(new SightReader(false, PanelScheme.Dark, SightAccess.SignedOut));

        Assert.Contains("<meta name=\"color-scheme\" content=\"dark\">", page, StringComparison.Ordinal);
        Assert.Contains("id=\"session\" href=\"#sign-in\">Sign in<", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\{\w+\}", page);
    }

    [Theory]
    [InlineData(null, false, false)]
    [InlineData(null, true, true)]
    [InlineData(Scope.Look, false, true)]
    [InlineData(Scope.Forecast, false, false)]
    public async Task Page_FromAnotherMachine_HoldsFiguresOnlyForWhoeverMayLook(Scope? scope, bool lookOnLan, bool told)
    {
        await using PanelHost host = await PanelHost.StartAsync(true, 1, Passphrase, access => access with { LookOnLan = lookOnLan });
        string? key = scope is { } its ? host.Access.Keys.Make("its", its, "Robin")!.Value.Secret : null;

        (int status, string page) = await host.GetFromAfarAsync("/", key);
        (int asked, _) = await host.GetFromAfarAsync("/api/now", key);

        Assert.Equal(200, status);
        Assert.Equal(told, asked == 200);
        Assert.Contains("id=\"session\"", page, StringComparison.Ordinal);
        Assert.Equal(told, Told().IsMatch(page));
        Assert.Equal(told, page.Contains("class=\"why\"", StringComparison.Ordinal));
        Assert.Equal(told, page.Contains("Alder Bank", StringComparison.Ordinal));
        Assert.Contains(key is null ? ">Sign in<" : ">Signed in<", page, StringComparison.Ordinal);
        Assert.Equal(told, page.Contains('°', StringComparison.Ordinal) && page.Contains("As of", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_FromAnotherMachineWithoutAPassphrase_HoldsNoFigures()
    {
        await using PanelHost host = await PanelHost.StartAsync(true, 1, null, access => access with { LookOnLan = true });

        (_, string page) = await host.GetFromAfarAsync("/");

        Assert.DoesNotMatch(Told(), page);
        Assert.DoesNotContain("class=\"why\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_WhatAPersonTyped_BecomesNoMarkup()
    {
        const string Evil = "</script><script>alert(1)</script><b title='&'>\u2028";
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        NowBody now = JsonSerializer.Deserialize<NowBody>(await host.Client.GetStringAsync("/api/now"), JsonSerializerOptions.Web)!;
        now = now with { Why = Evil, Holding = Evil };

        string page = new SightPage(new PileController.Panel.Assets.PanelAssets()).Of(now, JsonSerializer.Serialize(now, JsonSerializerOptions.Web), new SightReader(false, PanelScheme.System, SightAccess.Open));

        Assert.DoesNotContain("alert(1)</script>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b ", page, StringComparison.Ordinal);
        Assert.Equal(Evil, JsonDocument.Parse(Told().Match(page).Groups["json"].Value).RootElement.GetProperty("holding").GetString());
        Assert.Contains(WebUtility.HtmlEncode("</script><script>alert(1)"), page, StringComparison.Ordinal);
    }

    [GeneratedRegex("""<script type="application/json" id="told">(?<json>[^<]+)</script>""")]
    private static partial Regex Told();
}
