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

            // The view before stays until the next has been fetched.
            await Expect(page.Locator($"#views [data-id={view}]")).ToHaveAttributeAsync("aria-current", "page");
            await Expect(page.Locator("main h1")).ToBeAttachedAsync();
            await WaitForDataAsync(page, view);

            int overflow = await page.EvaluateAsync<int>(
                "() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(overflow <= 0, $"{view} is {overflow} px wider than {wide} px.");
            await Pictures.SaveAsync(page, $"demo-{view}-{wide}");
        }

        Assert.Empty(troubles);
    }

    [Fact]
    public async Task Evening_WithADeadPump_IsWalkedByThePagesOwnButtons()
    {
        await using DemoProcess demo = await DemoProcess.OpenAsync("--data", _data, "--urls", "http://127.0.0.1:0", "--speed", "300");
        await using IBrowserContext context = await browser.ContextAsync(demo.Client.BaseAddress!.ToString().TrimEnd('/'), 390);
        IPage page = await context.NewPageAsync();
        List<string> troubles = [];
        page.PageError += (_, fault) => troubles.Add(fault);
        await page.GotoAsync("/");
        await Expect(page.Locator("#link-state[data-state=live]")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await page.GetByRole(AriaRole.Link, new() { Name = "Sign in" }).ClickAsync();
        await page.GetByLabel("Your name, for the record").First.FillAsync("Robin");
        await page.GetByLabel("Passphrase", new() { Exact = true }).FillAsync(demo.Passphrase!);
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#session")).ToHaveTextAsync("Signed in");

        ILocator dead = page.GetByRole(AriaRole.Button, new() { Name = "Pump does not turn" });
        await GoAsync(page, "More", "Rig");
        await dead.ClickAsync();
        await Expect(dead).ToHaveAttributeAsync("aria-pressed", "true");
        await GoAsync(page, "By hand");
        await page.GetByRole(AriaRole.Button, new() { Name = "Full" }).ClickAsync();
        ILocator take = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take the pump: 100 %") });
        await take.ClickAsync();
        ILocator asking = page.GetByRole(AriaRole.Link, new() { NameRegex = new(@"^Alarms \(\d+\)$") });
        await Expect(asking).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(take).ToBeDisabledAsync(new() { Timeout = 60_000 });

        await GoAsync(page, "More", "Rig");
        await page.GetByRole(AriaRole.Button, new() { Name = "Mend everything" }).ClickAsync();
        await Expect(dead).ToHaveAttributeAsync("aria-pressed", "false");
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new("^Alarms") }).ClickAsync();
        ILocator clear = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Clear this trip: ") });
        await Expect(clear).Not.ToHaveCountAsync(0);
        while (await clear.CountAsync() > 0)
        {
            string name = (await clear.First.GetAttributeAsync("aria-label"))!;
            await clear.First.ClickAsync();
            await Expect(page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true })).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        }

        await GoAsync(page, "By hand");
        await Expect(page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take the pump") })).ToBeEnabledAsync();
        Assert.Empty(troubles);
    }

    private static async Task GoAsync(IPage page, params string[] names)
    {
        foreach (string name in names)
        {
            await page.GetByRole(AriaRole.Link, new() { NameRegex = new("^" + name) }).First.ClickAsync();
        }
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
