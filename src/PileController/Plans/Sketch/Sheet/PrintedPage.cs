using System.Xml.Linq;
using PileController.Simulation;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Plans.Sketch.Sheet;

/// <summary>A page to print: what stands around its content.</summary>
internal static class PrintedPage
{
    /// <summary>Where the panel serves the style of such pages.</summary>
    public const string StylePath = "/css/sheet.css";

    /// <summary>The page.</summary>
    /// <param name="title">Its title and first heading, already clean.</param>
    /// <param name="embedStyle">True for a file that stands by itself; false for the panel, whose rules let no style stand in the page.</param>
    /// <param name="content">What follows the heading.</param>
    public static string Html(string title, bool embedStyle, params object?[] content)
    {
        XElement style = embedStyle
            ? El("style", Style())
            : new XElement("link", new XAttribute("rel", "stylesheet"), new XAttribute("href", StylePath));
        XElement page = new(
            "html", new XAttribute("lang", "en"),
            new XElement(
                "head", new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement(
                    "meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
                El("title", title), style,
                // Without it a browser asks the panel for an icon that is not there.
                embedStyle ? null : new XElement("link", new XAttribute("rel", "icon"), new XAttribute("href", "/icon.svg"))),
            new XElement("body", new XElement("main", El("h1", title), content)));
        return "<!doctype html>\n" + page.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    private static string Style()
    {
        using StreamReader reader = new(Demo.Open("wwwroot/css/sheet.css"));
        return reader.ReadToEnd();
    }
}
