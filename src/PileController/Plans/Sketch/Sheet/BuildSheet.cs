using System.Globalization;
using System.Xml.Linq;
using PileController.Settings;
using PileController.Simulation;
using PileController.Units;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Plans.Sketch.Sheet;

/// <summary>One printable page to build by.</summary>
internal static class BuildSheet
{
    /// <summary>Where the panel serves the sheet's style.</summary>
    public const string StylePath = "/css/sheet.css";

    /// <summary>The page.</summary>
    /// <param name="settings">The holding, checked.</param>
    /// <param name="sketch">Its sketch.</param>
    /// <param name="embedStyle">True for a file that stands by itself; false for the panel, whose rules let no style stand in the page.</param>
    public static string Html(PileSettings settings, PlanSketch sketch, bool embedStyle)
    {
        UnitSystem u = settings.Units;
        string name = Clean(settings.Site.Name);
        XElement style = embedStyle
            ? El("style", Style())
            : new XElement("link", new XAttribute("rel", "stylesheet"), new XAttribute("href", StylePath));
        XElement page = new(
            "html", new XAttribute("lang", "en"),
            new XElement(
                "head", new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement(
                    "meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
                El("title", $"Build sheet: {name}"), style,
                // Without it a browser asks the panel for an icon that is not there.
                embedStyle ? null : new XElement("link", new XAttribute("rel", "icon"), new XAttribute("href", "/icon.svg"))),
            new XElement(
                "body",
                new XElement(
                    "main",
                    El("h1", $"Build sheet: {name}"),
                    El("p", Summary(sketch, u)),
                    SheetDrawing.Of(settings, u),
                    Class(
                        "columns", "div",
                        SheetLists.Materials(settings, sketch, u), SheetLists.Pipes(settings, sketch, u),
                        SheetLists.Probes(settings, u), SheetLists.Order(settings, u),
                        SheetLists.Cautions(sketch, u)),
                    SheetLists.Signatures())));
        return "<!doctype html>\n" + page.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    private static string Summary(PlanSketch sketch, UnitSystem u)
    {
        string lit = sketch.Heap.LitOnDay is double day
            ? $"lights on day {day.ToString("F0", CultureInfo.InvariantCulture)}"
            : "does not light in this weather";
        return $"By this reckoning the heap {lit} and bears {Show.Power(sketch.Coil.MeanDrawnWatts, u)} on the mean; the house loses "
            + $"{Show.Power(sketch.House.DesignLossWatts, u)} on its design night.";
    }

    private static string Style()
    {
        using StreamReader reader = new(Demo.Open("wwwroot/css/sheet.css"));
        return reader.ReadToEnd();
    }
}
