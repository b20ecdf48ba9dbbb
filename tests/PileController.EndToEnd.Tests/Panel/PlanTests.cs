using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>What a grower does at the plan in autumn.</summary>
public sealed class PlanTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    [Fact]
    public async Task Turns_ChangedByKeyboard_ChangeThePictureAtOnceAndTheFiguresOnceReckoned()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("plan");
        ILocator slider = bench.Page.GetByRole(AriaRole.Slider, new() { Name = "Turns of pipe" });
        ILocator turns = bench.Page.Locator("main .drawing .turn");
        ILocator big = bench.Page.Locator("main .big");
        ILocator old = bench.Page.GetByText("from before your change").First;
        await Expect(turns).ToHaveCountAsync(38);
        await Expect(old).ToBeHiddenAsync();
        string before = await big.InnerTextAsync();

        // The sums are held up: what changes now is the page's own doing.
        bench.Host.Sketch.Gate.Reset();
        await slider.FocusAsync();
        await bench.Page.Keyboard.PressAsync("ArrowRight");
        await bench.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(turns).ToHaveCountAsync(42);
        await Expect(slider).ToHaveAttributeAsync("aria-valuetext", "21, built 19");
        await Expect(old).ToBeVisibleAsync();
        await Expect(bench.Page.GetByText("Reckoning…")).ToBeVisibleAsync();
        Assert.Equal(before, await big.InnerTextAsync());

        bench.Host.Sketch.Gate.Set();

        await Expect(old).ToBeHiddenAsync();
        await Expect(big).Not.ToHaveTextAsync(before);
        await Expect(bench.Page.Locator(".plan-state")).ToHaveTextAsync(new Regex("W on the season's mean, [0-9]+.W more than as built"));
        await Expect(bench.Page.GetByRole(AriaRole.Columnheader, new() { Name = "As tried" })).ToBeVisibleAsync();
        await Expect(slider).ToBeFocusedAsync();
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Secondary_OnAPhone_IsFoldedAndOpensByKeyboardAndOnADeskStandsOpen()
    {
        await using PageBench phone = await browser.OpenAsync();
        await phone.GoAsync("plan");
        ILocator series = phone.Page.Locator("main .plan-figures .chart path.series").First;
        await Expect(phone.Page.Locator("main .answer")).ToContainTextAsync("Worst night");
        await Expect(series).ToBeHiddenAsync();

        await phone.Page.Locator("summary", new() { HasText = "Week by week" }).FocusAsync();
        await phone.Page.Keyboard.PressAsync("Enter");

        await Expect(series).ToBeVisibleAsync();
        await using PageBench desk = await browser.OpenAsync(1280);
        await desk.GoAsync("plan");
        await Expect(desk.Page.Locator("main .plan-figures .chart path.series").First).ToBeVisibleAsync();
        Assert.Empty(phone.Troubles);
    }

    [Fact]
    public async Task Heap_MadeWider_StandsOverTheOutlineOfTheHeapAsBuilt()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("plan");
        await Expect(bench.Page.Locator(".drawing .as-built")).ToHaveCountAsync(0);

        await bench.Page.GetByLabel("Radius of the heap, m").FillAsync("2.5");

        await Expect(bench.Page.Locator(".drawing .as-built")).ToHaveCountAsync(1);
        await Expect(bench.Page.Locator("main figure")).ToContainTextAsync("5.00 m wide");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Back to as built" }).ClickAsync();
        await Expect(bench.Page.Locator(".drawing .as-built")).ToHaveCountAsync(0);
        await Expect(bench.Page.Locator(".plan-state")).ToContainTextAsync("as it is built");
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Number_NotAllowed_IsNamedAsThePageDoesAndTheFiguresStayMarkedOld()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("plan");

        await bench.Page.GetByLabel("Cover, m").FillAsync("3");

        await Expect(bench.Page.GetByText("Cover: 3 is not allowed. Allowed: a number from 0 to 1.")).ToBeVisibleAsync();
        await Expect(bench.Page.GetByText("from before your change").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Units_Toggled_ReachSlidersFiguresAndSentences()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("plan");
        await bench.Page.Locator("#units").ClickAsync();

        await Expect(bench.Page.GetByLabel("Radius of the turns, ft")).ToHaveValueAsync("3.25");
        await Expect(bench.Page.Locator("main .big")).ToContainTextAsync("BTU/h");
        await Expect(bench.Page.GetByText("Give back 79 gal in week 9.")).ToBeVisibleAsync();
        await bench.Page.GetByLabel("Radius of the turns, ft").FillAsync("4");
        await Expect(bench.Page.Locator("[data-field=radiusM] output")).ToHaveTextAsync(new Regex("4.0.ft, built 3.3"));
        await Expect(bench.Page.Locator(".plan-state")).ToContainTextAsync("than as built");
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Slider_MovedFast_AsksForTheLastPlaceOnly()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("plan");
        ILocator slider = bench.Page.GetByRole(AriaRole.Slider, new() { Name = "Turns of pipe" });
        await slider.FocusAsync();
        bench.Host.Sketch.Gate.Reset();
        int made = bench.Host.Sketch.Made;
        for (int i = 0; i < 15; i++)
        {
            await bench.Page.Keyboard.PressAsync("ArrowRight");
        }

        bench.Host.Sketch.Gate.Set();

        await Expect(bench.Page.Locator(".old-mark").First).ToBeHiddenAsync();
        await Expect(slider).ToHaveAttributeAsync("aria-valuetext", "34, built 19");
        await Expect(bench.Page.Locator("main tbody tr", new() { HasText = "Pipe" }).First).ToContainTextAsync("213.6");
        Assert.InRange(bench.Host.Sketch.Made - made, 1, 15);
        Assert.Equal(1, bench.Host.Sketch.MostRunning);
    }

    [Fact]
    public async Task Seasons_Started_ShowProgressAndThenWhatMayBeReliedOn()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("plan");
        await bench.Page.GetByLabel("How many seasons").FillAsync("2");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Run the seasons" }).ClickAsync();
        await Expect(bench.Page.GetByRole(AriaRole.Progressbar)).ToBeVisibleAsync();
        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Give it up" })).ToBeVisibleAsync();

        bench.Host.Seasons.Let(2);

        await Expect(bench.Page.GetByText("2 seasons are done.")).ToBeVisibleAsync(new() { Timeout = 15_000 });
        await Expect(bench.Page.Locator("[data-card=ahead] tbody tr").Nth(1)).ToContainTextAsync("150");
        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Run the seasons" })).ToBeVisibleAsync();
        Assert.Empty(bench.Troubles);
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(390, true)]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    public async Task Change_Underway_IsAccessibleAndFits(int wide, bool dark)
    {
        await using PageBench bench = await browser.OpenAsync(wide, dark);
        await bench.GoAsync("plan");
        bench.Host.Seasons.Let(2);
        await bench.Page.GetByLabel("How many seasons").FillAsync("2");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Run the seasons" }).ClickAsync();
        await Expect(bench.Page.GetByText("2 seasons are done.")).ToBeVisibleAsync(new() { Timeout = 15_000 });
        await bench.Page.GetByLabel("Radius of the heap, m").FillAsync("2.4");
        await Expect(bench.Page.Locator(".plan-state")).ToContainTextAsync("than as built");
        bench.Host.Sketch.Gate.Reset();
        await bench.Page.GetByLabel("Radius of the turns, m").FillAsync("1.3");
        await Expect(bench.Page.GetByText("Reckoning…")).ToBeVisibleAsync();

        int overflow = await bench.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
        AxeResult axe = await bench.Page.RunAxe();
        await Pictures.SaveAsync(bench.Page, $"plan-change-{wide}-{(dark ? "dark" : "light")}");

        Assert.Equal(0, overflow);
        Assert.Equal(string.Empty, string.Join("; ", axe.Violations.Select(one => $"{one.Id}: {string.Join(" | ", one.Nodes.Select(node => node.Html))}")));
    }

    [Fact]
    public async Task Sheet_Opened_ShowsTheHeapAsTriedAndKeepsThePanelsRules()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("plan");
        await bench.Page.GetByLabel("Radius of the turns, m").FillAsync("0.8");
        await Expect(bench.Page.Locator(".plan-state")).ToContainTextAsync("than as built");
        List<string> troubles = [];

        IPage sheet = await bench.Page.Context.RunAndWaitForPageAsync(
            () => bench.Page.GetByRole(AriaRole.Link, new() { Name = "Open the build sheet to print" }).ClickAsync());

        // Loaded once more from its start with ears open; a page still on its way there cannot be.
        await Expect(sheet.GetByRole(AriaRole.Heading).First).ToContainTextAsync("Alder Bank");
        sheet.Console += (_, message) => troubles.Add($"{message.Text} {message.Location}");
        sheet.PageError += (_, fault) => troubles.Add(fault);
        await sheet.ReloadAsync();

        await Expect(sheet.GetByRole(AriaRole.Heading).First).ToContainTextAsync("Alder Bank");
        await Expect(sheet.Locator("body")).ToContainTextAsync("0.80 m");
        Assert.True(await sheet.EvaluateAsync<bool>("() => document.styleSheets.length === 1 && document.styleSheets[0].cssRules.length > 0"));
        AxeResult axe = await sheet.RunAxe();
        await Pictures.SaveAsync(sheet, "plan-sheet-1280");
        Assert.Equal(string.Empty, string.Join("; ", axe.Violations.Select(one => $"{one.Id}: {string.Join(" | ", one.Nodes.Select(node => node.Html))}")));
        Assert.Empty(troubles);
        Assert.Empty(bench.Troubles);
    }
}
