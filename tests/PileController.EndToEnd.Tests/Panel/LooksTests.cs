using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>Every view, at both widths, light and dark: no accessibility fault, nothing wider than the screen.</summary>
public sealed class LooksTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const string Ground = "() => getComputedStyle(document.body).backgroundColor";

    public static TheoryData<string, int, bool> Views()
    {
        TheoryData<string, int, bool> data = [];
        foreach (string view in (string[])["now", "record", "decisions", "hand", "trips", "rig", "commission", "plan", "ledger", "settings", "more", "sign-in"])
        {
            foreach (int wide in (int[])[390, 1280])
            {
                data.Add(view, wide, false);
                data.Add(view, wide, true);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Views))]
    public async Task View_AtAWidthAndInAColourScheme_IsAccessibleAndFits(string view, int wide, bool dark)
    {
        await using PageBench bench = await browser.OpenAsync(wide, dark, passphrase: view == "sign-in" ? "warm chips in january" : null);
        if (view == "trips")
        {
            bench.Host.Control.Trip = "noFlow";
            await bench.Host.NextTickAsync();
            while ((await bench.Host.GetAsync("/api/now")).GetProperty("alarms").GetProperty("worst").GetString() != "high")
            {
                await bench.Host.NextTickAsync();
            }
        }

        await bench.GoAsync(view);
        await Pictures.SaveAsync(bench.Page, $"{view}-{wide}-{(dark ? "dark" : "light")}");

        await AssertWellMadeAsync(bench);
    }

    [Theory]
    [InlineData(390, false, "dark", 2)]
    [InlineData(1280, true, "light", 1)]
    public async Task Colours_ChosenAgainstTheSystems_HoldFromTheFirstLookOnAndAreAccessible(int wide, bool systemIsDark, string chosen, int presses)
    {
        await using PageBench bench = await browser.OpenAsync(wide, systemIsDark);
        await bench.GoAsync("now");
        string before = await bench.Page.EvaluateAsync<string>(Ground);
        for (int i = 0; i < presses; i++)
        {
            await bench.Page.Locator("#scheme").ClickAsync();
        }

        string after = await bench.Page.EvaluateAsync<string>(Ground);
        Assert.NotEqual(before, after);

        // What the controller writes is in them already: no script has come. The page is left before the scripts
        // are let through again, else what is still under way would mix empty scripts with full ones.
        await bench.Page.RouteAsync("**/js/**", route => route.FulfillAsync(new() { ContentType = "text/javascript", Body = string.Empty }));
        await bench.Page.ReloadAsync();
        Assert.Equal(after, await bench.Page.EvaluateAsync<string>(Ground));
        await bench.Page.GotoAsync("data:text/html,left");
        await bench.Page.UnrouteAsync("**/js/**");
        await bench.GoAsync("now");
        Assert.Equal(after, await bench.Page.EvaluateAsync<string>(Ground));
        await Expect(bench.Page.Locator("#scheme")).ToHaveAttributeAsync("aria-label", $"Colours: {chosen}. Change");
        await Pictures.SaveAsync(bench.Page, $"chosen-{chosen}-{wide}");
        await AssertWellMadeAsync(bench);
        await bench.GoAsync("record");
        await AssertWellMadeAsync(bench);
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(1280, true)]
    public async Task Access_SignedInAndWithoutAPassphrase_IsAccessibleAndFits(int wide, bool dark)
    {
        await using PageBench bench = await browser.OpenAsync(wide, dark, passphrase: "warm chips in january");
        await bench.GoAsync("sign-in");
        await bench.Page.GetByLabel("Passphrase", new() { Exact = true }).FillAsync("warm chips in january");
        await bench.Page.Keyboard.PressAsync("Enter");
        await bench.Page.Locator("#session:text-is('Signed in')").WaitForAsync();
        await bench.GoAsync("sign-in");
        await bench.Page.Locator("[data-card=access] li").First.WaitForAsync();
        await Pictures.SaveAsync(bench.Page, $"access-in-{wide}");
        await AssertWellMadeAsync(bench);

        await using PageBench open = await browser.OpenAsync(wide, dark);
        await open.GoAsync("sign-in");
        await open.Page.GetByText("Set one here with a code").ClickAsync();
        await Pictures.SaveAsync(open.Page, $"access-open-{wide}");
        await AssertWellMadeAsync(open);
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(1280, true)]
    public async Task Commission_AStepAndWhatWasFound_AreAccessibleAndFit(int wide, bool dark)
    {
        await using PageBench bench = await browser.OpenAsync(wide, dark);
        await bench.GoAsync("commission");
        await bench.Page.GetByLabel("Your name, for the record and the sheet").FillAsync("Robin");
        await bench.Page.Locator("[data-test=bucket] summary").ClickAsync();
        await AssertWellMadeAsync(bench);
        await bench.Page.Locator("[data-test=pair] summary").ClickAsync();
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Begin: pair supply and return, it moves the rig" }).ClickAsync();
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Go on", Exact = true }).WaitForAsync();
        await Pictures.SaveAsync(bench.Page, $"commission-step-{wide}");
        await AssertWellMadeAsync(bench);
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Give up" }).ClickAsync();
        await bench.Page.Locator("[data-over=pair]").WaitForAsync();
        await Pictures.SaveAsync(bench.Page, $"commission-over-{wide}");
        await AssertWellMadeAsync(bench);
    }

    private static async Task AssertWellMadeAsync(PageBench bench)
    {
        int overflow = await bench.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        string small = await bench.Page.EvaluateAsync<string>(
            """
            () => [...document.querySelectorAll('button, a, select, summary, input:not([type=checkbox]):not([type=radio]), label.tick, label.choice')]
              .filter(e => e.checkVisibility() && !e.matches('.skip'))
              .map(e => [e, e.getBoundingClientRect()])
              .filter(([, r]) => r.height < 44 || r.width < 44)
              .map(([e, r]) => `${e.tagName} ${e.textContent.slice(0, 20)} ${r.width}x${r.height}`).join('; ')
            """);
        AxeResult axe = await bench.Page.RunAxe();

        Assert.Equal(0, overflow);
        Assert.Equal(string.Empty, small);
        Assert.Equal(string.Empty, string.Join("; ", axe.Violations.Select(one => $"{one.Id}: {string.Join(" | ", one.Nodes.Select(node => node.Html))}")));
        Assert.Empty(bench.Troubles);
    }
}
