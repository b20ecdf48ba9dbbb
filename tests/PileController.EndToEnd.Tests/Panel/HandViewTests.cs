using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>By hand while an interlock acts: what is refused, why, and what is given instead.</summary>
public sealed class HandViewTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    [Fact]
    public async Task Pump_TakenInAHouseThatIsTooWarm_IsToldToBeHeldOffBeforeAndMeanwhile()
    {
        // Slow, so that what is held does not end meanwhile.
        await using PageBench bench = await browser.OpenAsync(speed: 20);
        bench.Host.Control.Acting["houseHot"] = true;
        await bench.Host.NextTickAsync();
        await bench.GoAsync("hand");
        ILocator notice = bench.Page.Locator("#hand-blocked");
        await Expect(notice).ToContainTextAsync("The pump is held off, whatever is asked");
        await Expect(notice).ToContainTextAsync("The house is too warm. Open the vents; the draw resumes by itself.");

        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        await bench.Page.GetByLabel("For how many minutes").FillAsync("600");
        await bench.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Ask for the pump: 50 %.* as far as interlocks let it$") }).ClickAsync();

        ILocator said = bench.Page.Locator("form [role=status]");
        await Expect(said).ToHaveTextAsync("The pump was asked for 50 % and is given 0 %.");
        ILocator held = bench.Page.Locator("[data-held=pump]");
        await Expect(held).ToContainTextAsync("Pump: 50 % asked, 0 % given");
        await Expect(held).ToContainTextAsync("The house is too warm.");
        await Expect(bench.Page.Locator("main")).Not.ToContainTextAsync("is yours");

        bench.Host.Control.Acting.Clear();

        await Expect(held).ToContainTextAsync("Pump at 50 %");
        await Expect(held).Not.ToContainTextAsync("The house is too warm.");
        await Expect(said).ToContainTextAsync("The pump is at 50 %, as asked, and goes back by itself");
        await Expect(notice).ToBeHiddenAsync();
        Assert.Empty(bench.Troubles);
    }

    [Theory]
    [InlineData("houseHot", "valve", "100", "0 %", "The valve is held off")]
    [InlineData("houseHot", "blower", "100", "0 %", "The blower is held off")]
    [InlineData("batteryLow", "blower", "100", "0 %", "The blower is held off")]
    [InlineData("lineFrost", "pump", "0", "40 %", "The pump gets what the guard against frost needs, where you ask for less.")]
    [InlineData("lineFrost", "valve", "0", "40 %", "The valve gets what the guard against frost needs, where you ask for less.")]
    public async Task Actuator_ThatAnInterlockActsOn_IsToldSo(string id, string actuator, string asked, string given, string told)
    {
        await using PageBench bench = await browser.OpenAsync(speed: 20);
        bench.Host.Control.Acting[id] = true;
        await bench.Host.NextTickAsync();
        await bench.GoAsync("hand");
        await bench.Page.Locator($"input[value={actuator}]").CheckAsync();
        await bench.Page.Locator("#hand-value").FillAsync(asked);
        await Expect(bench.Page.Locator("#hand-blocked")).ToContainTextAsync(told);

        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        await bench.Page.GetByLabel("For how many minutes").FillAsync("600");
        await bench.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Ask for the ") }).ClickAsync();

        await Expect(bench.Page.Locator($"[data-held={actuator}]")).ToContainTextAsync($"{asked} % asked, {given} given");
        await Expect(bench.Page.Locator($"[data-held={actuator}]")).ToContainTextAsync(told);
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Actuator_ThatNoInterlockActsOn_IsFreeWhileAnotherIsHeld()
    {
        await using PageBench bench = await browser.OpenAsync(speed: 20);
        bench.Host.Control.Acting["batteryLow"] = true;
        await bench.Host.NextTickAsync();
        await bench.GoAsync("hand");

        // Before the first tick is told nothing is held either: the blower shows that the page knows.
        await bench.Page.Locator("input[value=blower]").CheckAsync();
        await Expect(bench.Page.Locator("#hand-blocked")).ToContainTextAsync("The blower is held off");
        await bench.Page.Locator("input[value=pump]").CheckAsync();

        await Expect(bench.Page.Locator("#hand-blocked")).ToBeHiddenAsync();
        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take the pump: 50 %") })).ToBeEnabledAsync();
    }
}
