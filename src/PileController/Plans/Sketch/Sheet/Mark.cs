using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace PileController.Plans.Sketch.Sheet;

/// <summary>
/// Elements of the sheet. They are nodes, not text, so what a person wrote can never become markup; and none is left
/// without content, since a browser does not take a self-closed table cell for closed.
/// </summary>
internal static class Mark
{
    public static XElement El(string name, string text) => new(name, text);

    public static XElement Class(string style, string name, params object[] content) =>
        new(name, new XAttribute("class", style), content);

    /// <summary>A shape of a drawing; its numbers are written to a tenth.</summary>
    public static XElement Shape(string name, string style, params (string Name, double Value)[] numbers) => new(
        name, new XAttribute("class", style),
        numbers.Select(n => new XAttribute(n.Name, n.Value.ToString("0.#", CultureInfo.InvariantCulture))));

    /// <summary>A word in a drawing.</summary>
    public static XElement Word(string style, double x, double y, string text)
    {
        XElement word = Shape("text", style, ("x", x), ("y", y));
        word.Add(text);
        return word;
    }

    /// <summary>A heading over its content.</summary>
    public static XElement Part(string heading, params object?[] content) => new("section", El("h2", heading), content);

    /// <summary>A table of names and values.</summary>
    public static XElement Rows(IEnumerable<(string Name, string Value)> rows) => new(
        "table", new XElement("tbody", rows.Select(r => new XElement("tr", new XElement("th", new XAttribute("scope", "row"), r.Name), El("td", r.Value)))));

    /// <summary>Without what cannot stand in a page: control characters and halves of characters.</summary>
    public static string Clean(string text)
    {
        StringBuilder clean = new();
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (!Rune.IsControl(rune) && rune.Value is not (0xFFFE or 0xFFFF))
            {
                clean.Append(rune);
            }
        }

        return clean.ToString();
    }
}
