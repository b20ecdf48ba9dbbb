using Microsoft.Playwright;
using PileController.Settings.Changes;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>A setting changed wrongly and rightly, as the grower would.</summary>
public sealed class SettingsViewTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    [Fact]
    public async Task Setting_ChangedWrongly_IsToldWhereItStands()
    {
        await using PageBench bench = await OpenAsync();
        ILocator floor = Field(bench);
        await floor.FillAsync("20 °C");

        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "See what would change" }).ClickAsync();

        await Expect(bench.Page.Locator("[data-path='control.floor'] .error")).ToContainTextAsync("35 °C to 60 °C");
        await Expect(floor).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(bench.Page.GetByText("nothing is changed")).ToBeVisibleAsync();
        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Apply", Exact = true })).ToBeHiddenAsync();
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Setting_ChangedRightly_ShowsTheDifferenceBeforeItApplies()
    {
        await using PageBench bench = await OpenAsync();
        await Field(bench).FillAsync("116.6 °F");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "See what would change" }).ClickAsync();
        await Expect(bench.Page.Locator(".preview td")).ToHaveTextAsync(["45 °C", "47 °C"]);
        Assert.False(File.Exists(Path.Combine(bench.Host.Folder, SettingsDesk.FileName)));

        Task stopping = bench.Host.Stopping;
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Apply", Exact = true }).ClickAsync();
        await stopping;

        ChangeEntry entry = Assert.Single(ChangeBook.FromJson(await File.ReadAllTextAsync(Path.Combine(bench.Host.Folder, SettingsDesk.FileName))).Entries);
        Assert.Equal(("Robin", "control.floor", "\"47 °C\""), (entry.Who, entry.Path, entry.Is));
    }

    [Fact]
    public async Task Setting_GivenInFahrenheit_IsShownRoundedWithFahrenheitBeside()
    {
        await using PageBench bench = await OpenAsync("control.house.minimum");
        ILocator row = bench.Page.Locator("[data-path='control.house.minimum']");
        await bench.Page.GetByLabel("control.house.minimum", new() { Exact = true }).FillAsync("43 °F");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "See what would change" }).ClickAsync();
        ILocator cells = bench.Page.Locator(".preview td");
        string was = await cells.First.InnerTextAsync();
        await Expect(cells.Nth(1)).ToHaveTextAsync("6.1 °C");

        await bench.Page.Locator("#units").ClickAsync();

        await Expect(cells.Nth(1)).ToHaveTextAsync("6.1 °C (43.0\u00a0°F)");
        await Expect(cells.First).ToContainTextAsync($"{was} (");
        await Expect(row).ToContainTextAsync("= ");
        await Expect(row).ToContainTextAsync("-10 °C to 30 °C (14.0\u00a0°F to 86.0\u00a0°F)");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        Task stopping = bench.Host.Stopping;
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Apply", Exact = true }).ClickAsync();
        await stopping;
        ChangeEntry entry = Assert.Single(ChangeBook.FromJson(await File.ReadAllTextAsync(Path.Combine(bench.Host.Folder, SettingsDesk.FileName))).Entries);
        Assert.Equal("\"6.111111111111111 °C\"", entry.Is);
    }

    [Fact]
    public async Task Setting_TypedAnew_HidesAnOlderLook()
    {
        await using PageBench bench = await OpenAsync();
        await Field(bench).FillAsync("47 °C");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "See what would change" }).ClickAsync();
        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Apply", Exact = true })).ToBeVisibleAsync();

        await Field(bench).FillAsync("48 °C");

        await Expect(bench.Page.GetByRole(AriaRole.Button, new() { Name = "Apply", Exact = true })).ToBeHiddenAsync();
    }

    [Fact]
    public async Task Setting_OfTheFileOnly_HasNoField()
    {
        await using PageBench bench = await OpenAsync("panel.address");

        await Expect(bench.Page.Locator("[data-path='panel.address'] input")).ToHaveCountAsync(0);
        await Expect(bench.Page.Locator("[data-path='panel.address']")).ToContainTextAsync("In the file only: it decides who reaches this page.");
    }

    private static ILocator Field(PageBench bench) => bench.Page.GetByLabel("control.floor", new() { Exact = true });

    private async Task<PageBench> OpenAsync(string search = "control.floor")
    {
        PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("settings");
        await bench.Page.GetByLabel("Find a setting").FillAsync(search);
        return bench;
    }
}
