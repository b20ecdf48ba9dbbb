using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using PileController.Panel.Assets;
using PileController.Tests.Support;

namespace PileController.Tests.Panel;

public partial class AssetsTests
{
    [Theory]
    [InlineData("/js/views/now.js", "text/javascript")]
    [InlineData("/css/base.css", "text/css")]
    [InlineData("/icon.svg", "image/svg+xml")]
    public async Task Asset_Known_IsServedWithItsTypeAndTag(string path, string type)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync(path);
        using HttpRequestMessage again = new(HttpMethod.Get, path);
        again.Headers.IfNoneMatch.Add(answer.Headers.ETag!);
        using HttpResponseMessage unchanged = await host.Client.SendAsync(again);

        Assert.Equal(type, answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(HttpStatusCode.NotModified, unchanged.StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/index.html")]
    [InlineData("/js/main.js")]
    [InlineData("/icon.svg")]
    [InlineData("/healthz")]
    [InlineData("/api/ledger/report")]
    [InlineData("/api/commissioning/sheet")]
    public async Task PageOrFile_AskedForItsHeadOnly_IsAnsweredAsAskedForWhole(string path)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpRequestMessage head = new(HttpMethod.Head, path);

        using HttpResponseMessage whole = await host.Client.GetAsync(path);
        using HttpResponseMessage answer = await host.Client.SendAsync(head);

        Assert.Equal(whole.StatusCode, answer.StatusCode);
        Assert.Equal(whole.Content.Headers.ContentType, answer.Content.Headers.ContentType);
        Assert.Equal(whole.Headers.ETag, answer.Headers.ETag);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync());
    }

    [Theory]
    [InlineData("/../appsettings.json")]
    [InlineData("/%2e%2e/Program.cs")]
    [InlineData("/js/..%2f..%2fPileController.dll")]
    [InlineData("/etc/passwd")]
    public async Task Asset_PathTrick_FindsNothing(string path)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync(path);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public void Page_NoFile_AsksAnotherHostOrStylesInline()
    {
        PanelAssets assets = new();
        Assert.All(
            assets.Paths.Select(path => Encoding.UTF8.GetString(assets.Of(path).Content)).Append(assets.Index),
            text => Assert.DoesNotMatch(Outside(), text.Replace("http://www.w3.org/2000/svg", string.Empty, StringComparison.Ordinal)));
    }

    [Fact]
    public void Page_FirstView_NamesEveryScriptItNeedsAndNoneThatCanWait()
    {
        PanelAssets assets = new();
        string[] named = [.. Hint().Matches(assets.Index).Select(hint => "/" + hint.Groups["path"].Value)];

        Assert.All(named, path => Assert.Contains(path, assets.Paths));
        Assert.Equal(named.Length, named.Distinct().Count());
        Assert.Contains("/js/views/now.js", named);
        Assert.Contains("/js/drawings/heap.js", named);
        Assert.DoesNotContain("/js/main.js", named);
        Assert.DoesNotContain("/js/views/record.js", named);
        foreach (string path in named.Append("/js/main.js"))
        {
            string folder = path[..(path.LastIndexOf('/') + 1)];
            Assert.All(
                Import().Matches(PanelAssets.TextOf(path)),
                import => Assert.Contains(Path.GetFullPath(folder + import.Groups["path"].Value), named));
        }
    }

    [Fact]
    public async Task Styles_OfThePage_AreInItByTheirHashAndInOneFileThatLasts()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpResponseMessage page = await host.Client.GetAsync("/");
        string text = await page.Content.ReadAsStringAsync();
        string inner = Inner().Match(text).Groups["style"].Value;
        Match link = Assert.Single(Style().Matches(text));

        using HttpResponseMessage styles = await host.Client.GetAsync("/" + link.Groups["path"].Value);
        string rest = await styles.Content.ReadAsStringAsync();

        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(inner)));
        string policy = string.Join(' ', page.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains($"style-src 'self' 'sha256-{hash}';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Contains("immutable", styles.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        Assert.Equal("text/css", styles.Content.Headers.ContentType!.MediaType);
        Assert.All((string[])["base", "frame", "parts"], name => Assert.Contains(PanelAssets.TextOf($"/css/{name}.css"), inner, StringComparison.Ordinal));
        Assert.All(
            (string[])["forms", "drawings", "charts", "plan"],
            name => Assert.Contains(PanelAssets.TextOf($"/css/{name}.css"), rest, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_BeforeItsFirstLookIsPainted_FetchesNothingAndRunsOneScriptByItsHash()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using HttpResponseMessage page = await host.Client.GetAsync("/");
        string text = await page.Content.ReadAsStringAsync();
        string script = Assert.Single(Script().Matches(text)).Groups["script"].Value;
        string atOnce = Later().Replace(text, string.Empty);

        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        Assert.Contains($"script-src 'self' 'sha256-{hash}';", string.Join(' ', page.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.DoesNotContain("stylesheet", atOnce, StringComparison.Ordinal);
        Assert.DoesNotContain("modulepreload", atOnce, StringComparison.Ordinal);
        Assert.DoesNotContain(" src=", atOnce, StringComparison.Ordinal);
        Assert.Contains("js/main.js", text, StringComparison.Ordinal);
    }

    [GeneratedRegex("<script>(?<script>.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Script();

    [GeneratedRegex("""<template id="later">.*?</template>""", RegexOptions.Singleline)]
    private static partial Regex Later();

    [GeneratedRegex("<style>(?<style>.*?)</style>", RegexOptions.Singleline)]
    private static partial Regex Inner();

    [GeneratedRegex("""<link rel="stylesheet" href="(?<path>[^"]+)">""")]
    private static partial Regex Style();

    [GeneratedRegex("""<link rel="modulepreload" href="(?<path>[^"]+)">""")]
    private static partial Regex Hint();

    [GeneratedRegex("""^import .*from "(?<path>[^"]+)";""", RegexOptions.Multiline)]
    private static partial Regex Import();

    [GeneratedRegex("https?://|innerHTML| style=|javascript:|eval\\(")]
    private static partial Regex Outside();
}
