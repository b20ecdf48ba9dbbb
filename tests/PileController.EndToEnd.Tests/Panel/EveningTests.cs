using Microsoft.Playwright;
using PileController.Records;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>What a grower does at the page of an evening.</summary>
public sealed class EveningTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    [Fact]
    public async Task Hand_PumpTakenForTenMinutes_ShowsAndEndsByItself()
    {
        // Ten minutes there are ten seconds here.
        await using PageBench bench = await browser.OpenAsync(speed: 60);
        await bench.GoAsync("hand");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Full" }).ClickAsync();

        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Take the pump: 100 % for 10 min" }).ClickAsync();

        ILocator held = bench.Page.Locator("[data-held=pump]");
        await Expect(held).ToContainTextAsync("Pump at 100 %");
        await Expect(held).ToContainTextAsync("by Robin, ends Mon 28 Jan");
        await Expect(held).ToBeHiddenAsync(new() { Timeout = 60_000 });
        await Expect(bench.Page.GetByText("Nothing is held by hand.")).ToBeVisibleAsync();
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Hand_ByKeyboardAlone_IsTakenAndGivenBack()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("hand");
        await bench.Page.GetByLabel("Your name, for the record").FocusAsync();
        await bench.Page.Keyboard.TypeAsync("Robin");
        await bench.Page.Keyboard.PressAsync("Enter");
        ILocator back = bench.Page.GetByRole(AriaRole.Button, new() { Name = "Give back" });
        await Expect(back).ToBeVisibleAsync();

        await back.FocusAsync();
        await bench.Page.Keyboard.PressAsync("Enter");

        await Expect(back).ToBeHiddenAsync();
    }

    [Fact]
    public async Task Hand_WithoutAName_NamesTheFieldAsThePageDoes()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("hand");

        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Take the pump" }).ClickAsync();

        await Expect(bench.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Your name: nothing is given. Allowed: 1 to 40 characters");
    }

    [Fact]
    public async Task Tonight_WhileARigIsTripped_IsNotPromised()
    {
        const string Good =
            """
            { "houseMinimumC": 5, "minimumP10C": 5.5, "minimumP50C": 6, "minimumP90C": 7, "atUtcMs": 1359370800000, "chanceOfHolding": 0.97,
              "poor": false, "backupWatts": null, "backupFromUtcMs": null, "untilUtcMs": 1359381600000, "madeUtcMs": 1359349200000,
              "usesForecast": false, "offsetMinutes": -300 }
            """;
        await using PageBench bench = await browser.OpenAsync();
        await bench.Page.RouteAsync("**/api/tonight", route => route.FulfillAsync(new() { ContentType = "application/json", Body = Good }));
        await bench.GoAsync("now");
        ILocator card = bench.Page.Locator("[data-card=tonight]");
        await Expect(card).ToHaveAttributeAsync("data-tone", "good");
        await Expect(card).ToContainTextAsync("Made on Mon 28 Jan, 00:00.");

        bench.Host.Control.Trip = "noFlow";

        await Expect(card).ToHaveAttributeAsync("data-tone", "warn");
        await Expect(card).ToContainTextAsync("Likely to hold tonight, but only if heat is given");
        await Expect(card).ToContainTextAsync("The heat is stopped now.");
    }

    [Fact]
    public async Task Trip_Standing_BlocksTheHandUntilCleared()
    {
        await using PageBench bench = await browser.OpenAsync();
        bench.Host.Control.Trip = "noFlow";
        await bench.Host.NextTickAsync();
        await bench.GoAsync("hand");
        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Take the pump" })).ToBeDisabledAsync();
        await Expect(bench.Page.Locator("form")).ToContainTextAsync("The rig is tripped. Clear the trip first");

        await bench.Page.GetByRole(AriaRole.Link, new() { NameRegex = new("^Alarms \\(\\d\\)") }).ClickAsync();
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Clear this trip: The pump runs and no water moves." }).ClickAsync();

        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Clear this trip" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Rig_ProbeBroken_IsMarkedThereAndInTheHeapsDrawing()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("rig");
        ILocator core = bench.Page.Locator(".probe[data-channel=heapCore]");
        await core.GetByRole(AriaRole.Button, new() { Name = "Break Heap core", Exact = true }).ClickAsync();
        await core.GetByRole(AriaRole.Button, new() { Name = "Break Heap core now" }).ClickAsync();
        await Expect(core).ToContainTextAsync("✕ does not answer");

        await bench.GoAsync("now");
        await Expect(bench.Page.Locator("main .drawing .bad-text")).ToHaveTextAsync("✕ fault");
        await Expect(bench.Page.GetByText("Heap is well")).ToBeVisibleAsync();

        await bench.GoAsync("rig");
        await core.GetByRole(AriaRole.Button, new() { Name = "Mend Heap core" }).ClickAsync();
        await Expect(core).ToContainTextAsync("good");
    }

    [Fact]
    public async Task Feed_ServiceStops_SaysThatThereIsNoNews()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("now");

        await bench.Host.StopAsync();

        await Expect(bench.Page.Locator("#link-state")).ToContainTextAsync("No news for", new() { Timeout = 15_000 });
        await Expect(bench.Page.Locator("#stale")).ToBeVisibleAsync();
        await Expect(bench.Page.Locator(".answer h2").Nth(1)).ToContainTextAsync("Heap was well, ");
        await Expect(bench.Page.Locator(".answer .mark[data-tone=good]")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Rig_SwitchBroken_OffersOnlyFaultsItCanHave()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("rig");
        ILocator level = bench.Page.Locator(".probe[data-channel=level]");
        await level.GetByRole(AriaRole.Button, new() { Name = "Break Tank level", Exact = true }).ClickAsync();

        await Expect(level.Locator("option")).ToHaveTextAsync(["broken wire", "stuck"]);
    }

    [Fact]
    public async Task Day_OnThePageOfTheMoment_SumsWhatTheRecordHolds()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("now");
        ILocator card = bench.Page.Locator("[data-card=day]");
        await Expect(card.Locator("dd").First).Not.ToHaveTextAsync("–");
        (_, long from, long to, long step) = bench.Host.Record.Asked.First(one => one.Series == "house");
        IReadOnlyList<SeriesPoint> house = await bench.Host.Record.SamplesAsync("house", from, to, step, CancellationToken.None);
        IReadOnlyList<SeriesPoint> water = await bench.Host.Record.SamplesAsync("waterDraw", from, to, step, CancellationToken.None);

        string text = (await card.InnerTextAsync()).Replace('\u00a0', ' ');

        Assert.Equal(60_000, step);
        Assert.Contains(FormattableString.Invariant($"{house.Min(point => point.Least):F1} °C"), text);
        Assert.Contains("at no time", text);
        Assert.Contains(FormattableString.Invariant($"{water.Sum(point => point.Mean ?? 0) / 60_000:F1} kWh"), text);
        Assert.Contains("not once", text);
        Assert.Equal(house.Any(point => point.Mean is null), text.Contains("no record", StringComparison.Ordinal));
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Units_Toggled_ChangeEverywhereAndAreRemembered()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("now");
        ILocator number = bench.Page.Locator(".answer .big").First;
        await Expect(number).ToContainTextAsync("°C");

        await bench.Page.Locator("#units").ClickAsync();
        await Expect(number).ToContainTextAsync("°F");
        await bench.Page.ReloadAsync();

        await Expect(number).ToContainTextAsync("°F");
    }

    [Fact]
    public async Task Decisions_FilteredByKindAndWords_ShowThoseOnly()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("decisions");
        await bench.Page.GetByLabel("Trip", new() { Exact = true }).CheckAsync();
        await Expect(bench.Page.Locator(".decision .chip").Filter(new() { HasNotText = "Trip" })).ToHaveCountAsync(0);
        await bench.Page.GetByLabel("Words in it").FillAsync("no such words");

        await Expect(bench.Page.GetByText("No decision fits.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Name_WithMarkup_StaysText()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("hand");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync("<img src=x onerror=alert(1)>");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Take the pump" }).ClickAsync();

        await Expect(bench.Page.Locator("[data-held=pump]")).ToContainTextAsync("<img src=x onerror=alert(1)>");
        Assert.Equal(0, await bench.Page.Locator("main img").CountAsync());
        Assert.Empty(bench.Troubles);
    }
}
