using System.Text.Json;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>Sentences that the controller tells in metric units only, for a reader who chose the other ones.</summary>
public sealed class ChosenUnitsTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const string Asking =
        """
        { "tests": [], "probes": [], "sheet": [], "run": { "test": "bucket", "title": "Bucket test", "step": 2, "steps": 3, "awaits": true, "ended": false, "kept": false,
          "elapsedSeconds": 5, "say": "The water is at 40 °C and runs at 4.0 L/min.", "outcomes": [],
          "question": { "kind": "number", "text": "How many litres are in the bucket?", "unit": "L", "least": 0.5, "most": 1000 } } }
        """;

    [Fact]
    public async Task Alarm_OfANightTooCold_IsToldInFahrenheit()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("trips");
        ILocator card = bench.Page.Locator("#alarms .alarm[data-key=tonightPoor]");
        await Expect(card).ToContainTextAsync("°C");

        await bench.Page.Locator("#units").ClickAsync();

        await Expect(card).ToContainTextAsync("°F expected");
        await Expect(card).Not.ToContainTextAsync("°C");
        await Expect(bench.Page.Locator("main table").First).Not.ToContainTextAsync("°C");
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Test_ThatAsksForLitres_AsksForGallonsAndAnswersInLitres()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.Page.AddInitScriptAsync("localStorage.setItem('units', 'american')");
        await bench.Page.RouteAsync("**/api/commissioning", route => route.FulfillAsync(new() { ContentType = "application/json", Body = Asking }));
        string? sent = null;
        await bench.Page.RouteAsync("**/api/commissioning/answer", route =>
        {
            sent = route.Request.PostData;
            return route.FulfillAsync(new() { ContentType = "application/json", Body = Asking });
        });
        await bench.Page.GotoAsync("/#commission");
        ILocator step = bench.Page.Locator("[data-step='2']");
        await Expect(step.Locator(".why")).ToHaveTextAsync("The water is at 104.0\u00a0°F and runs at 1.06\u00a0gal/min.");

        await bench.Page.GetByLabel("How many gallons are in the bucket? (gal)").FillAsync("2");
        Task answered = bench.Page.WaitForResponseAsync("**/api/commissioning/answer");
        await bench.Page.Keyboard.PressAsync("Enter");
        await answered;

        // 1 US gallon = 3.785412 L: NIST SP 811 (2008), appendix B.8 (from memory).
        Assert.Equal(7.5708, JsonDocument.Parse(sent!).RootElement.GetProperty("figure").GetDouble(), 3);
    }
}
