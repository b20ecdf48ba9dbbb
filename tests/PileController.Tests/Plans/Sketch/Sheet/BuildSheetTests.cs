using System.Xml.Linq;
using PileController.Plans.Sketch;
using PileController.Plans.Sketch.Sheet;
using PileController.Settings;
using PileController.Simulation;
using PileController.Units;

namespace PileController.Tests.Plans.Sketch.Sheet;

public class BuildSheetTests
{
    private static readonly string[] Void = ["meta", "link"];

    [Theory]
    [InlineData(UnitSystem.Metric, true)]
    [InlineData(UnitSystem.Metric, false)]
    [InlineData(UnitSystem.Us, true)]
    public void Sheet_InAnyForm_IsWellFormedAndClosesWhatABrowserWantsClosed(UnitSystem units, bool embed)
    {
        XElement page = Page(PileSettings.AlderBank with { Units = units }, embed);

        // Within the drawing, which is SVG, shapes may close themselves.
        Assert.All(
            page.DescendantsAndSelf().Where(e => e.IsEmpty && !e.AncestorsAndSelf("svg").Any()),
            e => Assert.Contains(e.Name.LocalName, Void));
        Assert.Single(page.Descendants("svg"));
        Assert.Equal(3, page.Descendants("section").Single(s => (string?)s.Attribute("class") == "signatures").Elements("p").Count());
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"><img src=x onerror=alert(1)>")]
    [InlineData("Alder & Bank's \u0001 \uD800 heap")]
    public void Name_OfAHolding_NeverBecomesMarkup(string name)
    {
        PileSettings named = PileSettings.AlderBank with { Site = PileSettings.AlderBank.Site with { Name = name } };
        XElement page = Page(named, embed: true);

        Assert.DoesNotContain(page.Descendants(), e => e.Name.LocalName is "script" or "img");
        Assert.Equal($"Build sheet: {Mark.Clean(name)}", page.Descendants("h1").Single().Value);
    }

    [Fact]
    public void Sheet_ForThePanel_CarriesNoStyleOfItsOwn()
    {
        XElement page = Page(PileSettings.AlderBank, embed: false);

        Assert.Empty(page.Descendants("style"));
        Assert.DoesNotContain(page.DescendantsAndSelf(), e => e.Attribute("style") is not null || e.Attribute("onclick") is not null);
        Assert.Equal(PrintedPage.StylePath, (string?)page.Descendants("link").Single(l => (string?)l.Attribute("rel") == "stylesheet").Attribute("href"));
    }

    [Fact]
    public void Sheet_ForAFile_CarriesTheSameStyleAsThePanelServes()
    {
        using StreamReader served = new(Demo.Open("wwwroot" + PrintedPage.StylePath));
        string style = served.ReadToEnd();
        string html = BuildSheet.Html(PileSettings.AlderBank, Sketched.Demo, embedStyle: true);

        // A browser reads style as it stands: nothing in it may need escaping.
        Assert.DoesNotContain(style, c => c is '<' or '>' or '&');
        Assert.Contains(style.ReplaceLineEndings("\n"), html.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.DoesNotContain("<link", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Drawing_OfTheHeap_IsToScale()
    {
        XElement svg = Page(PileSettings.AlderBank, embed: false).Descendants("svg").Single();
        double Number(XElement e, string name) => double.Parse(e.Attribute(name)!.Value, System.Globalization.CultureInfo.InvariantCulture);
        XElement body = svg.Elements("rect").Single(e => (string?)e.Attribute("class") == "body");
        XElement ring = svg.Elements("circle").Single(e => (string?)e.Attribute("class") == "turn-ring");
        XElement[] probes = [.. svg.Elements("circle").Where(e => (string?)e.Attribute("class") == "probe")];

        Assert.Equal(2 * 1.9 / 2.0, Number(body, "width") / Number(body, "height"), 3);
        Assert.Equal(1.0 / (2 * 1.9), Number(ring, "r") / Number(body, "width"), 3);
        Assert.Equal(8, probes.Length);
        Assert.Equal(38, svg.Elements("circle").Count(e => (string?)e.Attribute("class") == "turn"));
    }

    [Fact]
    public void Sheet_InUsUnits_HoldsNoneOfTheOthers()
    {
        string text = Page(PileSettings.AlderBank with { Units = UnitSystem.Us }, embed: false).Element("body")!.Value;

        Assert.DoesNotContain("°C", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" mm", text, StringComparison.Ordinal);
        Assert.Contains("yd³", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_Any_CarriesEveryCautionAndWhoDecides()
    {
        string text = Page(PileSettings.AlderBank, embed: false).Value;

        Assert.All(Sketched.Demo.Cautions, c => Assert.Contains(c.Metric.Replace(" " + Say.LocalCodes, "", StringComparison.Ordinal), text, StringComparison.Ordinal));
        Assert.Contains(Say.LocalCodes, text, StringComparison.Ordinal);
    }

    private static XElement Page(PileSettings settings, bool embed)
    {
        string html = BuildSheet.Html(settings, Sketched.Demo, embed);
        Assert.StartsWith("<!doctype html>\n", html, StringComparison.Ordinal);
        return XElement.Parse(html["<!doctype html>\n".Length..], LoadOptions.PreserveWhitespace);
    }
}
