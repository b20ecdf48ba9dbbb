using System.Globalization;
using System.Xml.Linq;
using PileController.Ledgers;
using PileController.Ledgers.Pages;
using PileController.Plans.Sketch.Sheet;
using PileController.Settings;
using PileController.Simulation;
using PileController.Units;

namespace PileController.Tests.Ledgers;

public class SeasonReportTests
{
    private static readonly string[] Void = ["meta", "link"];

    [Theory]
    [InlineData(UnitSystem.Metric, true, true)]
    [InlineData(UnitSystem.Us, false, true)]
    [InlineData(UnitSystem.Metric, false, false)]
    public void Report_InAnyForm_IsWellFormedAndClosesWhatABrowserWantsClosed(UnitSystem units, bool embed, bool closed)
    {
        XElement page = Page(SampleBook.Two(closed), units, embed);

        Assert.All(
            page.DescendantsAndSelf().Where(e => e.IsEmpty && !e.AncestorsAndSelf("svg").Any()),
            e => Assert.Contains(e.Name.LocalName, Void));
        Assert.Single(page.Descendants("svg"));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"><img src=x onerror=alert(1)>")]
    [InlineData("Jo & Ann's \u0001 \uD800 pump")]
    public void Words_OfPeople_NeverBecomeMarkup(string words)
    {
        Hand hand = SampleBook.Jo with { Who = words };
        Book book = SampleBook.Two();
        SeasonEntry season = book.Seasons[1] with
        {
            Name = words,
            Notes = [new NoteEntry(words, hand)],
            Parts = [new PartEntry(words, 1, 1, false, hand)],
            Masses = [new MassEntry(MassWay.Out, 3000, Known.Measured, words, hand)],
            Closed = book.Seasons[1].Closed! with { By = hand },
            Fuel = SampleBook.Propane with { Money = words },
        };
        XElement page = Page(book.With(book.Seasons[1], season), UnitSystem.Metric, embed: true);

        Assert.DoesNotContain(page.Descendants(), e => e.Name.LocalName is "script" or "img");
        Assert.StartsWith(Mark.Clean(words), page.Descendants("h1").Single().Value, StringComparison.Ordinal);
        Assert.Contains(page.Descendants("li"), li => li.Value.EndsWith(Mark.Clean(words), StringComparison.Ordinal));
    }

    [Fact]
    public void Report_ForThePanel_CarriesNoStyleOfItsOwnAndAsksNobodyElse()
    {
        XElement page = Page(SampleBook.Two(), UnitSystem.Metric, embed: false);

        Assert.Empty(page.Descendants("style"));
        Assert.Empty(page.Descendants("script"));
        Assert.DoesNotContain(page.DescendantsAndSelf(), e => e.Attribute("style") is not null || e.Attribute("onclick") is not null);
        Assert.All(page.Descendants().SelectMany(e => e.Attributes()).Where(a => a.Name.LocalName is "href" or "src"), a => Assert.StartsWith("/", a.Value, StringComparison.Ordinal));
        Assert.Equal(PrintedPage.StylePath, (string?)page.Descendants("link").Single(l => (string?)l.Attribute("rel") == "stylesheet").Attribute("href"));
    }

    [Fact]
    public void Report_ForAFile_CarriesTheStyleThatThePanelServes()
    {
        using StreamReader served = new(Demo.Open("wwwroot" + PrintedPage.StylePath));
        string html = SeasonReport.Html(SampleBook.View(SampleBook.Two()), SampleBook.Two().Seasons[1], UnitSystem.Metric, embedStyle: true);

        Assert.Contains(served.ReadToEnd().ReplaceLineEndings("\n"), html.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.DoesNotContain("<link", html, StringComparison.Ordinal);
        Assert.DoesNotContain(
            Page(SampleBook.Two(), UnitSystem.Metric, embed: true).Descendants().SelectMany(e => e.Attributes()), a => a.Name.LocalName is "href" or "src");
    }

    [Fact]
    public void Report_OfAClosedSeason_TellsAllThatItPromises()
    {
        string text = Page(SampleBook.Two(), UnitSystem.Metric, embed: false).Value;

        Assert.All(
            new[]
            {
                "1944 kWh ± 78 kWh", "An estimate", "Heap below its floor75 h", "Frost guard150 h", "Pump starts1800", "Trips14", "Coldest night kept2025-11-08",
                "9000 kg, guessed: 12 trailers", "Outnot entered", "2 × steel drum, 45.00 $ each, reused", "Added water.", "0.90 of what was told", "2026-02-01",
                "Winter 2024", "without cancelling", "167 h of 1667 h",
            },
            promised => Assert.Contains(promised, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Report_OfAnOpenSeason_SaysThatItsFiguresAreThoseSoFar()
    {
        string text = Page(SampleBook.Two(closed: false), UnitSystem.Metric, embed: false).Value;

        Assert.Contains("so far", text, StringComparison.Ordinal);
        Assert.Contains("Lessons are drawn when the season is closed.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Report_InUsUnits_HoldsNoneOfTheOthersButWhatPeopleWrote()
    {
        string text = Page(SampleBook.Two(), UnitSystem.Us, embed: false).Element("body")!.Value;

        Assert.DoesNotContain("°C", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" kg", text, StringComparison.Ordinal);
        Assert.Contains("million BTU", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Bars_OfTheMonths_AreAsHighAsTheirHeatAndTheWhiskersAsTheirBand()
    {
        LedgerPage page = LedgerPage.Of(SampleBook.View(SampleBook.Two()), SampleBook.Two().Seasons[1]);
        XElement svg = MonthChart.Of(page.Months, UnitSystem.Metric);
        double Number(XElement e, string name) => double.Parse(e.Attribute(name)!.Value, CultureInfo.InvariantCulture);

        XElement[] bars = [.. svg.Elements("rect")];
        XElement[] whiskers = [.. svg.Elements("line").Where(e => (string?)e.Attribute("class") == "whisker" && Number(e, "x1") == Number(e, "x2"))];

        Assert.Equal(5, bars.Length);
        double most = page.Months.Max(m => m.HeatKWh + m.WaterErrorKWh);
        for (int i = 0; i < bars.Length; i++)
        {
            // Numbers are written to a tenth, 70 high.
            Assert.Equal(70 * page.Months[i].HeatKWh / most, Number(bars[i], "height"), 0.11);
            Assert.Equal(140 * page.Months[i].WaterErrorKWh / most, Number(whiskers[i], "y1") - Number(whiskers[i], "y2"), 0.21);
        }
    }

    [Fact]
    public void Lists_LongerThanThePage_AreCountedAndNotCutOffInSilence()
    {
        Book book = SampleBook.Two();
        SeasonEntry season = book.Seasons[1] with
        {
            Notes = [.. Enumerable.Range(0, 30).Select(i => new NoteEntry($"note {i}", SampleBook.Jo))],
            Parts = [.. Enumerable.Range(0, 30).Select(i => new PartEntry($"part {i}", 1, 1, false, SampleBook.Jo))],
        };
        string text = Page(book.With(book.Seasons[1], season), UnitSystem.Metric, embed: false).Value;

        Assert.Contains("27 earlier notes more stand in the book.", text, StringComparison.Ordinal);
        Assert.Contains("24 parts more stand in the book.", text, StringComparison.Ordinal);
        Assert.Contains("note 29", text, StringComparison.Ordinal);
    }

    private static XElement Page(Book book, UnitSystem units, bool embed)
    {
        string html = SeasonReport.Html(SampleBook.View(book, PileSettings.AlderBank), book.Seasons[1], units, embed);
        Assert.StartsWith("<!doctype html>\n", html, StringComparison.Ordinal);
        return XElement.Parse(html["<!doctype html>\n".Length..], LoadOptions.PreserveWhitespace);
    }
}
