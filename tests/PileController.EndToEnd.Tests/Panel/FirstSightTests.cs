using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>What the controller writes into the page itself, before and without its scripts.</summary>
public sealed class FirstSightTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    // The answers' lines but the last of what is done: since when, which only the scripts say.
    private const string Lines =
        """
        () => [...document.querySelectorAll('.answer')].slice(0, 3).flatMap(card => [card.dataset.tone, ...[...card.querySelectorAll('h2, p')].map(line => line.innerText)])
          .filter(line => line.trim() !== '' && !line.startsWith('Since '))
        """;

    [Theory]
    [InlineData("metric")]
    [InlineData("american")]
    public async Task Page_BeforeItsScripts_SaysWhatTheySay(string units)
    {
        // No tick comes between the two looks: they are at the pace of life.
        await using PageBench bench = await browser.OpenAsync(speed: 1);
        await bench.Page.AddInitScriptAsync($"localStorage.setItem('units', '{units}')");
        await bench.GoAsync("now");
        await bench.Page.ReloadAsync();
        await bench.GoAsync("now");
        string[] byScripts = await bench.Page.EvaluateAsync<string[]>(Lines);
        Assert.Empty(bench.Troubles);

        await bench.Page.RouteAsync("**/js/**", route => route.AbortAsync());
        await bench.Page.ReloadAsync();
        string[] byItself = await bench.Page.EvaluateAsync<string[]>(Lines);

        Assert.Equal(byScripts, byItself);
        Assert.Contains(byItself, line => line.EndsWith(units == "metric" ? "°C" : "°F", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_WhoseScriptsNeverCome_TellsItsMomentAndIsNotLive()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.Page.RouteAsync("**/js/**", route => route.AbortAsync());
        await bench.Page.GotoAsync("/");

        await Expect(bench.Page.Locator("#clock")).ToContainTextAsync(new System.Text.RegularExpressions.Regex(@"^As of Mon 28 Jan, \d\d:\d\d:\d\d$"));
        await Expect(bench.Page.Locator("#link-state")).ToHaveAttributeAsync("data-state", "waiting");
        await Expect(bench.Page.Locator(".written .why")).ToContainTextAsync("heap");
        Assert.Equal("25s", await bench.Page.Locator(".written").EvaluateAsync<string>("node => getComputedStyle(node).animationDelay"));
        await bench.Page.Locator(".written").EvaluateAsync("node => node.getAnimations()[0].finish()");
        await Expect(bench.Page.Locator(".written")).ToHaveCSSAsync("opacity", "0.75");
    }

    [Fact]
    public async Task Page_WhoseStreamNeverComes_SoonSaysThatThereIsNoNews()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.Page.RouteAsync("**/api/stream", route => route.AbortAsync());
        await bench.Page.GotoAsync("/");

        await Expect(bench.Page.Locator("#link-state")).ToContainTextAsync("No news for", new() { Timeout = 15_000 });
        await Expect(bench.Page.Locator("#stale")).ToBeVisibleAsync();
        await Expect(bench.Page.Locator(".answer .mark[data-tone=good]")).ToHaveCountAsync(0);
    }
}
