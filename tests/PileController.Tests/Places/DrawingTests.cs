using System.Xml.Linq;
using PileController.Tests.Architecture;

namespace PileController.Tests.Places;

/// <summary>Drawings can be read by a machine that reads aloud, run nothing and fetch nothing.</summary>
public sealed class DrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly string[] Files =
    [
        .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "hardware"), "*.svg", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Repository.Root, file)),
    ];

    public static TheoryData<string> Drawings => new(Files);

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Drawing_IsNamedAndDescribed(string path)
    {
        XElement root = XDocument.Parse(Repository.Read(path)).Root!;

        Assert.Equal(Svg + "svg", root.Name);
        XElement title = Assert.Single(root.Elements(Svg + "title"));
        XElement description = Assert.Single(root.Elements(Svg + "desc"));
        Assert.InRange(title.Value.Trim().Length, 5, 80);
        Assert.InRange(description.Value.Trim().Length, 80, 900);
        Assert.Equal("img", root.Attribute("role")?.Value);
        Assert.Equal($"{title.Attribute("id")?.Value} {description.Attribute("id")?.Value}", root.Attribute("aria-labelledby")?.Value);
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Drawing_RunsNothingAndFetchesNothing(string path)
    {
        string text = Repository.Read(path);
        XElement root = XDocument.Parse(text).Root!;
        string[] allowed = ["svg", "title", "desc", "style", "g", "rect", "path", "circle", "text"];

        Assert.All(root.DescendantsAndSelf(), element => Assert.Contains(element.Name.LocalName, allowed));
        Assert.All(root.DescendantsAndSelf().Attributes(), attribute =>
        {
            Assert.False(attribute.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase), $"{attribute}");
            Assert.False(attribute.Name.LocalName is "href" or "src", $"{attribute}");
        });
        Assert.DoesNotContain("url(", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<!DOCTYPE", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Drawings_AreSixAndEachIsShownOnAPage()
    {
        string pages = string.Concat(
            Directory.EnumerateFiles(Path.Combine(Repository.Root, "hardware"), "*.md").Select(File.ReadAllText));

        Assert.Equal(6, Files.Length);
        Assert.All(Files, file => Assert.Contains($"](drawings/{Path.GetFileName(file)})", pages, StringComparison.Ordinal));
    }
}
