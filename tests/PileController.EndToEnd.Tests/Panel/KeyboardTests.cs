using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>Every action of the page, by keyboard alone: Tab to it, and the keys its kind of control is used by.</summary>
public sealed class KeyboardTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const string Passphrase = "warm chips in january";
    private const string Tonight = "Cold spell: nights likely too cold for the house";

    [Fact]
    public async Task SignIn_ThenTakeByHandAndGiveBack()
    {
        await using PageBench bench = await browser.OpenAsync(passphrase: Passphrase);
        await bench.GoAsync("now");
        await PressAsync(bench, bench.Page.Locator("#session"), "Enter");
        await TypeAsync(bench, bench.Page.GetByLabel("Passphrase", new() { Exact = true }), Passphrase);
        await bench.Page.Keyboard.PressAsync("Enter");
        await Expect(bench.Page.Locator("#session")).ToHaveTextAsync("Signed in");

        await PressAsync(bench, bench.Page.Locator(".views a[data-id=hand]"), "Enter");
        await TabToAsync(bench, bench.Page.Locator("input[name=actuator]:checked"));
        await bench.Page.Keyboard.PressAsync("ArrowDown");
        await Expect(bench.Page.Locator("input[value=valve]")).ToBeCheckedAsync();
        await PressAsync(bench, bench.Page.Locator("#hand-value"), "End");
        await TypeAsync(bench, bench.Page.GetByLabel("Your name, for the record"), "Robin");
        await bench.Page.Keyboard.PressAsync("Enter");
        ILocator held = bench.Page.Locator("[data-held=valve]");
        await Expect(held).ToContainTextAsync("100 %");

        await PressAsync(bench, held.GetByRole(AriaRole.Button, new() { Name = "Give back" }), "Enter");
        await Expect(held).ToHaveCountAsync(0);
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Alarm_SeenShelvedAndTakenOff_AndATripCleared()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("trips");
        await TypeAsync(bench, bench.Page.GetByLabel("Your name, for the record"), "Robin");
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = $"I have seen it: {Tonight}" }), "Enter");
        await Expect(bench.Page.Locator("#alarms .alarm[data-key=tonightPoor]")).ToContainTextAsync("Seen by Robin");
        await PressAsync(bench, bench.Page.Locator($"summary[aria-label='Shelve for a while: {Tonight}']"), "Enter");
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = $"Shelve now: {Tonight}" }), "Enter");
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = $"Take off the shelf: {Tonight}" }), "Enter");
        await Expect(bench.Page.Locator("#alarms .alarm[data-key=tonightPoor]")).ToBeVisibleAsync();

        bench.Host.Control.Trip = "noFlow";
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = "Clear this trip" }), "Enter");
        await Expect(bench.Page.GetByText("Asked for at the next tick.")).ToBeVisibleAsync();
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Rig_AProbeBrokenAndMended()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("rig");
        ILocator house = bench.Page.Locator(".probe[data-channel=house]");
        await PressAsync(bench, house.GetByRole(AriaRole.Button, new() { Name = "Break House air", Exact = true }), "Enter");
        await PressAsync(bench, house.GetByRole(AriaRole.Button).Last, "Enter");
        await Expect(bench.Page.GetByText("Takes effect at the next tick.")).ToBeVisibleAsync();
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = "Mend everything" }), "Enter");
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Settings_ChangedAndApplied()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("settings");
        await TypeAsync(bench, bench.Page.GetByLabel("Find a setting"), "control.floor");
        ILocator floor = bench.Page.GetByLabel("control.floor", new() { Exact = true });
        await TabToAsync(bench, floor);
        await bench.Page.Keyboard.PressAsync("Control+a");
        await bench.Page.Keyboard.TypeAsync("47 °C");
        await TypeAsync(bench, bench.Page.GetByLabel("Your name, for the record"), "Robin");
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = "See what would change" }), "Enter");
        ILocator apply = bench.Page.GetByRole(AriaRole.Button, new() { Name = "Apply", Exact = true });
        await Expect(apply).ToBeFocusedAsync();

        Task stopping = bench.Host.Stopping;
        await bench.Page.Keyboard.PressAsync("Enter");
        await stopping;
    }

    [Fact]
    public async Task Record_ChannelsChosen_AndADecisionOpened()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        await PressAsync(bench, bench.Page.GetByText("Choose channels"), "Enter");
        await PressAsync(bench, bench.Page.GetByLabel("House air", new() { Exact = true }), "Space");
        await Expect(bench.Page.Locator(".chart h2")).ToHaveTextAsync(["Temperatures"]);
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = "14 days" }), "Enter");
        await PressAsync(bench, bench.Page.GetByText("decisions in this time"), "Enter");
        await PressAsync(bench, bench.Page.Locator(".line-link").First, "Enter");
        await Expect(bench.Page.Locator("h1")).ToHaveTextAsync("One decision");
    }

    [Fact]
    public async Task Ledger_ASeasonOpenedAndANoteWritten()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("ledger");
        await PressAsync(bench, bench.Page.GetByText("Open a season"), "Enter");
        await TypeAsync(bench, bench.Page.GetByLabel("Name", new() { Exact = true }), "Winter");
        await TypeAsync(bench, bench.Page.GetByLabel("Your name, for the book").First, "Robin");
        await bench.Page.Keyboard.PressAsync("Enter");
        await Expect(bench.Page.GetByRole(AriaRole.Heading, new() { Name = "Winter, since" })).ToBeVisibleAsync();

        await PressAsync(bench, bench.Page.GetByText("Write a note"), "Enter");
        await TypeAsync(bench, bench.Page.GetByLabel("What", new() { Exact = true }), "Chips from the north wood.");
        await bench.Page.Keyboard.PressAsync("Enter");
        await Expect(bench.Page.Locator("main .plain").GetByText("Chips from the north wood.")).ToBeVisibleAsync();
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Plan_TriedTypedPutBackAndRunAhead()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("plan");
        ILocator turns = bench.Page.GetByRole(AriaRole.Slider, new() { Name = "Turns of pipe" });
        await PressAsync(bench, turns, "ArrowRight");
        await Expect(turns).ToHaveAttributeAsync("aria-valuetext", "20, built 19");
        await TabToAsync(bench, bench.Page.GetByLabel("Radius of the heap, m"));
        await bench.Page.Keyboard.PressAsync("Control+a");
        await bench.Page.Keyboard.TypeAsync("2.5");
        await Expect(bench.Page.Locator("main figure")).ToContainTextAsync("5.00 m wide");
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Slider, new() { Name = "Cover" }), "ArrowUp");
        await Expect(bench.Page.Locator("[data-field=coverM] output")).ToContainTextAsync(", built");

        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = "Back to as built" }), "Enter");
        await Expect(bench.Page.Locator(".plan-state")).ToContainTextAsync("as it is built");
        await TabToAsync(bench, bench.Page.GetByLabel("How many seasons"));
        await bench.Page.Keyboard.PressAsync("Control+a");
        await bench.Page.Keyboard.TypeAsync("1");
        await PressAsync(bench, bench.Page.GetByRole(AriaRole.Button, new() { Name = "Run the seasons" }), "Enter");
        ILocator stop = bench.Page.GetByRole(AriaRole.Button, new() { Name = "Give it up" });
        await Expect(stop).ToBeFocusedAsync();
        await bench.Page.Keyboard.PressAsync("Enter");
        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Run the seasons" })).ToBeFocusedAsync();
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Head_UnitsAndColoursChosen()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("now");
        await PressAsync(bench, bench.Page.Locator("#units"), "Enter");
        await Expect(bench.Page.Locator("#units")).ToHaveTextAsync("°F");
        await PressAsync(bench, bench.Page.Locator("#scheme"), "Space");
        await Expect(bench.Page.Locator("#scheme")).ToHaveAttributeAsync("aria-label", "Colours: light. Change");
        Assert.Empty(bench.Troubles);
    }

    private static async Task PressAsync(PageBench bench, ILocator target, string key)
    {
        await TabToAsync(bench, target);
        await bench.Page.Keyboard.PressAsync(key);
    }

    private static async Task TypeAsync(PageBench bench, ILocator target, string text)
    {
        await TabToAsync(bench, target);
        await bench.Page.Keyboard.TypeAsync(text);
    }

    // On from where the focus is, round the whole page if need be; what cannot be reached so is not reached at all.
    private static async Task TabToAsync(PageBench bench, ILocator target)
    {
        await Expect(target).ToBeVisibleAsync();
        for (int steps = 0; steps < 400; steps++)
        {
            if (await target.EvaluateAsync<bool>("node => node === document.activeElement || node.contains(document.activeElement)"))
            {
                return;
            }

            await bench.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"Tab does not lead to {target}.");
    }
}
