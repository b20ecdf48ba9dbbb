using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PileController.Plans.Sketch;
using PileController.Plans.Sketch.Sheet;
using PileController.Settings;
using PileController.Simulation;
using PileController.Units;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>The build sheet as a printer gets it: one page, even with every caution, the longest name and the wider units.</summary>
public sealed partial class SheetPrintTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const int Days = 60;

    [Theory]
    [InlineData("A4", UnitSystem.Metric)]
    [InlineData("Letter", UnitSystem.Us)]
    public async Task Sheet_OfABuildWithEveryCaution_PrintsOnOnePage(string paper, UnitSystem units)
    {
        PileSettings demo = PileSettings.AlderBank;
        PileSettings settings = demo with
        {
            Units = units,
            Site = demo.Site with { Name = new string('W', 60) },
            Loop = demo.Loop with { LineExposure = 1 },
            Heap = demo.Heap with { Duct = demo.Heap.Duct with { ThroughHeap = true, FullFlowM3PerS = 0.004 } },
        };
        PlanSketch sketch = PlanSketching.Of(settings, PileController.Simulation.Demo.Weather(HoldingBuild.Place(settings)), PileController.Simulation.Demo.Built, Days);
        IBrowserContext context = await browser.ContextAsync("http://localhost", 800);
        IPage page = await context.NewPageAsync();
        await page.SetContentAsync(BuildSheet.Html(settings, sketch, embedStyle: true));

        byte[] printed = await page.PdfAsync(new PagePdfOptions { Format = paper });
        await context.CloseAsync();

        Assert.Equal(8, sketch.Cautions.Count);
        Assert.Equal(1, OnePage().Count(Encoding.Latin1.GetString(printed)));
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex OnePage();
}
