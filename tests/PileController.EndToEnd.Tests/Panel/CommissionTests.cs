using Microsoft.Playwright;
using PileController.EndToEnd.Tests.Demo;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>A grower commissions the demo's rig on a phone.</summary>
public sealed class CommissionTests(BrowserBench browser) : IClassFixture<BrowserBench>, IDisposable
{
    private readonly string _data = Directory.CreateTempSubdirectory("pile-commission-").FullName;

    public void Dispose() => Directory.Delete(_data, recursive: true);

    [Fact]
    public async Task Walk_FindAProbeAndTheBucketTest_EndsOnTheSheet()
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data, speed: 120);
        await using IBrowserContext context = await browser.ContextAsync(demo.Client.BaseAddress!.ToString().TrimEnd('/'), 390);
        IPage page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        List<string> troubles = [];
        page.PageError += (_, fault) => troubles.Add(fault);
        await SignInAsync(page, demo.Passphrase!);
        await page.GotoAsync("/#commission");
        await page.GetByLabel("Your name, for the record and the sheet").FillAsync("Robin");

        await page.Locator("[data-test=find] summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin: find a probe, it moves the rig" }).ClickAsync();
        await page.Locator("[data-step='2']").WaitForAsync();
        await demo.PostAsync("/api/faults", new { kind = "takenOut", channel = "supply" });
        ILocator found = page.Locator("[data-over=find] [data-subject=supply]");
        await found.WaitForAsync();
        await Expect(found).ToHaveAttributeAsync("data-verdict", "sound");
        await KeepAsync(page);
        await demo.Client.DeleteAsync("/api/faults");

        await page.Locator("[data-test=bucket] summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin: bucket test of the flow meter, it moves the rig" }).ClickAsync();
        for (int run = 1; run <= 3; run++)
        {
            ILocator empty = page.Locator($"[data-step='{(4 * run) - 3}']").GetByRole(AriaRole.Button, new() { Name = "Go on", Exact = true });
            await empty.ClickAsync();
            await page.GetByLabel("How many litres are in the bucket? (L)").FillAsync("6.4");
            await page.Keyboard.PressAsync("Enter");
        }

        ILocator meter = page.Locator("[data-over=bucket] [data-subject=flowMeter]");
        await Expect(meter).ToContainTextAsync("pulses a litre", new() { Timeout = 60_000 });
        await Pictures.SaveAsync(page, "commission-over-390");
        await KeepAsync(page);

        await page.GotoAsync("/api/commissioning/sheet");
        await Expect(page.Locator("h1")).ToHaveTextAsync("Commissioning sheet: Alder Bank");
        await Expect(page.Locator("body")).ToContainTextAsync("The probe in your hand is supply");
        await Expect(page.Locator("body")).ToContainTextAsync("Bucket test of the flow meter");
        Assert.Empty(troubles);
    }

    private static async Task KeepAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep on the sheet" }).ClickAsync();
        await Expect(page.GetByText("Kept on the sheet.")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done" }).ClickAsync();
    }

    private static async Task SignInAsync(IPage page, string passphrase)
    {
        await page.GotoAsync("/#sign-in");
        await page.GetByLabel("Passphrase", new() { Exact = true }).FillAsync(passphrase);
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#session:text-is('Signed in')").WaitForAsync();
    }
}
