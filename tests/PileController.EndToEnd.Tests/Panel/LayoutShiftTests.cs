namespace PileController.EndToEnd.Tests.Panel;

/// <summary>Nothing moves under a reader's eyes from what the controller wrote to the live page.</summary>
public sealed class LayoutShiftTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    // Above 0.1 a page is held to move about (web.dev, Cumulative Layout Shift, from memory); this one is to keep still.
    private const double Most = 0.02;

    // Layout Instability API (WICG draft, from memory): the share of the screen that moved, times how far.
    private const string Watch =
        """
        window.moved = [];
        new PerformanceObserver((seen) => seen.getEntries().forEach((entry) => window.moved.push({
          value: entry.value, what: entry.sources.map((one) => `${one.node?.nodeName} ${one.node?.id || one.node?.className} ${one.previousRect.top}>${one.currentRect.top} ${one.previousRect.left}>${one.currentRect.left}`).join(", "),
        }))).observe({ type: "layout-shift", buffered: true });
        """;

    [Theory]
    [InlineData(390, "metric", null)]
    [InlineData(1280, "metric", null)]
    [InlineData(390, "american", null)]
    [InlineData(390, "metric", "warm chips in january")]
    public async Task Page_FromTheFirstLookToTheLiveOne_KeepsStill(int wide, string units, string? passphrase)
    {
        await using PageBench bench = await browser.OpenAsync(wide, passphrase: passphrase);
        await bench.Page.AddInitScriptAsync($"localStorage.setItem('units', '{units}')");
        await bench.GoAsync("now");
        await bench.Page.AddInitScriptAsync(Watch);
        await bench.Page.ReloadAsync();
        await bench.GoAsync("now");
        await bench.Page.WaitForFunctionAsync("() => document.querySelector('[data-card=day] dd').textContent !== '–'");
        await bench.Page.EvaluateAsync("() => new Promise((seen) => requestAnimationFrame(() => requestAnimationFrame(seen)))");

        double all = await bench.Page.EvaluateAsync<double>("() => window.moved.reduce((sum, one) => sum + one.value, 0)");
        string what = await bench.Page.EvaluateAsync<string>("() => window.moved.map((one) => `${one.value.toFixed(4)}: ${one.what}`).join('\\n')");

        Assert.True(all <= Most, $"{all:F4} moved:\n{what}");
        Assert.Empty(bench.Troubles);
    }
}
