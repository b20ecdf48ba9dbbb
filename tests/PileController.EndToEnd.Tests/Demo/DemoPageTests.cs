using Microsoft.Playwright;
using PileController.EndToEnd.Tests.Panel;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Demo;

/// <summary>The page over the real demo, as a grower opens it on a phone and at the kitchen table.</summary>
public sealed class DemoPageTests(BrowserBench browser) : IClassFixture<BrowserBench>, IDisposable
{
    private readonly string _data = Directory.CreateTempSubdirectory("pile-page-").FullName;

    public void Dispose() => Directory.Delete(_data, recursive: true);

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task Page_OverTheDemo_ShowsEveryViewWithoutTroubleOrOverflow(int wide)
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data);
        await using IBrowserContext context = await browser.ContextAsync(demo.Client.BaseAddress!.ToString().TrimEnd('/'), wide);
        IPage page = await context.NewPageAsync();
        List<string> troubles = [];
        page.PageError += (_, fault) => troubles.Add(fault);
        foreach (string view in (string[])["now", "record", "decisions", "hand", "trips", "rig", "plan"])
        {
            await page.GotoAsync($"/#{view}");
            await Expect(page.Locator("#link-state[data-state=live]")).ToBeVisibleAsync();
            await Expect(page.Locator("main h1")).ToBeAttachedAsync();
            await WaitForDataAsync(page, view);

            int overflow = await page.EvaluateAsync<int>(
                "() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(overflow <= 0, $"{view} is {overflow} px wider than {wide} px.");
            await Pictures.SaveAsync(page, $"demo-{view}-{wide}");
        }

        Assert.Empty(troubles);
    }

    // What a view asks of the record comes a moment after the view.
    private static Task WaitForDataAsync(IPage page, string view) => view switch
    {
        "now" => page.WaitForFunctionAsync("() => /Coldest house air\\s+[-−0-9]/.test(document.querySelector('main').innerText)"),
        "record" => Expect(page.Locator("main .chart path.series").First).ToBeAttachedAsync(new() { Timeout = 30_000 }),
        "decisions" => Expect(page.Locator("main .decision").First).ToBeVisibleAsync(new() { Timeout = 30_000 }),
        "plan" => Expect(page.Locator("main .plan-figures .chart path.series").First).ToBeAttachedAsync(new() { Timeout = 30_000 }),
        _ => Task.CompletedTask,
    };
}
