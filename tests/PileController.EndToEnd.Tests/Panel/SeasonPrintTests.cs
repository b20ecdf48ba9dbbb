using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PileController.Control.Decisions;
using PileController.Ledgers;
using PileController.Ledgers.Pages;
using PileController.Records.Accounts;
using PileController.Settings;
using PileController.Units;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>The report of a season as a printer gets it: one page, even with the longest names and full lists.</summary>
public sealed partial class SeasonPrintTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private static readonly Hand Jo = new("Who writes has a name of forty characters", "command line", 1_770_000_000_000);

    [Theory]
    [InlineData("A4", UnitSystem.Metric)]
    [InlineData("Letter", UnitSystem.Us)]
    public async Task Report_OfAFullSeason_PrintsOnOnePage(string paper, UnitSystem units)
    {
        PileSettings settings = PileSettings.AlderBank with { Units = units };
        Book book = Full();
        IBrowserContext context = await browser.ContextAsync("http://localhost", 800);
        IPage page = await context.NewPageAsync();
        await page.SetContentAsync(SeasonReport.Html(new LedgerView(book, null, settings), book.Seasons[^1], units, embedStyle: true));

        byte[] printed = await page.PdfAsync(new PagePdfOptions { Format = paper });
        await context.CloseAsync();

        Assert.Equal(1, OnePage().Count(Encoding.Latin1.GetString(printed)));
    }

    // Four seasons of nine months, each with more parts and notes than the page holds.
    private static Book Full()
    {
        string wide = string.Concat(Enumerable.Repeat("wide words ", 18));
        List<DayEntry> days = [];
        List<SeasonEntry> seasons = [];
        for (int year = 2022; year < 2026; year++)
        {
            DateOnly built = new(year, 9, 1);
            for (int i = 0; i < 270; i++)
            {
                DateOnly date = built.AddDays(i);
                days.Add(new DayEntry(
                    date, 1 + (8640L * days.Count), 8640L * (days.Count + 1), 0, 0, new Totals(7e7, 3e6, 5e6, 2e6, 1e6, 3000),
                    new TickFigures(8640, 86_400, 40_000, 4000, 1800, 3600, 80_000, 30, 1, 6e7, 86_400, 32_400, 0, 4.2, -12.5)));
            }

            Lessons lessons = new(
                new LearnedFactor(0.92, 1.03), new LearnedFactor(1.5, 1.1), new LearnedFactor(0.9, 1.05), 1.04, 2100, 2.6e7, 80, 220,
                new Fading(700, built.AddDays(40), built.AddDays(160), built.AddDays(260)));
            seasons.Add(new SeasonEntry(
                $"{wide[..54]} {year}", built, Jo, new FuelEntry("heating oil", 3.8, 0.17, "$", Jo),
                [new MassEntry(MassWay.In, 9000, Known.Guessed, wide, Jo), new MassEntry(MassWay.Out, 4000, Known.Measured, wide, Jo)],
                [.. Enumerable.Range(0, 20).Select(i => new PartEntry($"{i} {wide[..56]}", 2, 1234.56, i % 2 == 0, Jo))],
                [.. Enumerable.Range(0, 20).Select(i => new NoteEntry($"{i} {wide}", Jo))], new Closing(built.AddDays(269), Jo, lessons)));
        }

        return new Book(Book.CurrentSchema, null, days, seasons);
    }

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex OnePage();
}
