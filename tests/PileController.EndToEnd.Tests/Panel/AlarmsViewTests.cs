using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>What a grower does with an alarm, on a narrow page. The made-up control says from the start that tonight is poor.</summary>
public sealed class AlarmsViewTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const string Tonight = "Cold spell: nights likely too cold for the house";

    [Fact]
    public async Task Alarm_Standing_TellsWhatToDoAndIsSeenByName()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("trips");
        ILocator card = bench.Page.Locator("#alarms .alarm[data-key=tonightPoor]");
        await Expect(card).ToContainTextAsync("Medium priority");
        await Expect(card).ToContainTextAsync("First up");
        await Expect(card).ToContainTextAsync("What to do: Close the vents");
        await Expect(card).ToContainTextAsync("62 % chance of holding");
        await Expect(bench.Page.GetByRole(AriaRole.Link, new() { Name = "Alarms (1)" })).ToBeVisibleAsync();

        ILocator seen = bench.Page.GetByRole(AriaRole.Button, new() { Name = $"I have seen it: {Tonight}" });
        await seen.ClickAsync();
        await Expect(bench.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Your name is needed");
        await Expect(bench.Page.GetByLabel("Your name, for the record")).ToBeFocusedAsync();
        await bench.Page.Keyboard.TypeAsync("Robin");
        await seen.FocusAsync();
        await bench.Page.Keyboard.PressAsync("Enter");

        await Expect(card).ToContainTextAsync("Seen by Robin");
        await Expect(bench.Page.GetByRole(AriaRole.Link, new() { Name = "Alarms", Exact = true })).ToBeVisibleAsync();
        await Expect(bench.Page.Locator("main table").First).ToContainTextAsync("Seen, Robin");
    }

    [Fact]
    public async Task Alarm_Shelved_LeavesTheListAndComesBackWhenTakenOff()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("trips");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        await bench.Page.Locator($"summary[aria-label='Shelve for a while: {Tonight}']").ClickAsync();
        await bench.Page.GetByLabel($"For how long: {Tonight}").SelectOptionAsync("240");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = $"Shelve now: {Tonight}" }).ClickAsync();

        await Expect(bench.Page.Locator("#alarms")).ToContainTextAsync("No alarm stands.");
        await Expect(bench.Page.GetByText("by Robin.")).ToBeVisibleAsync();
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = $"Take off the shelf: {Tonight}" }).ClickAsync();
        await Expect(bench.Page.Locator("#alarms .alarm[data-key=tonightPoor]")).ToContainTextAsync("Not seen yet");
    }

    [Fact]
    public async Task Alarm_SeenBySomebodyWhoseNameIsMarkup_ShowsItAsText()
    {
        const string Name = "<img src=x onerror=alert(1)>";
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("trips");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync(Name);
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = $"I have seen it: {Tonight}" }).ClickAsync();

        await Expect(bench.Page.Locator("#alarms")).ToContainTextAsync($"Seen by {Name}");
        await Expect(bench.Page.Locator("main img")).ToHaveCountAsync(0);
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Alarm_ThatHasTripped_IsClearedFromItsCard()
    {
        await using PageBench bench = await browser.OpenAsync();
        bench.Host.Control.Trip = "noFlow";
        await bench.GoAsync("trips");
        ILocator card = bench.Page.Locator("#alarms .alarm[data-key=noFlow]");
        await Expect(card).ToContainTextAsync("High priority");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        await card.GetByRole(AriaRole.Button, new() { Name = "Clear this trip" }).ClickAsync();
        await Expect(card).ToContainTextAsync("Trip cleared by Robin");
        await Expect(bench.Page.GetByRole(AriaRole.Cell, new() { Name = "Trip cleared by Robin" })).ToBeVisibleAsync();
    }
}
