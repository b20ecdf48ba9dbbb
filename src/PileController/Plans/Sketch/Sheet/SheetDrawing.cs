using System.Globalization;
using System.Xml.Linq;
using PileController.Physics.Heaps;
using PileController.Rigs;
using PileController.Settings;
using PileController.Units;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Plans.Sketch.Sheet;

/// <summary>The heap to scale, cut open and from above, on one scale of 100 units a metre.</summary>
internal static class SheetDrawing
{
    private const double PerM = 100;
    private const double Margin = 34;
    private const double Head = 24;
    private const int MostTurnsDrawn = 30;

    // Drums are about half as high again as they are wide (common practice, no source).
    private const double DrumShape = 1.5;

    public static XElement Of(PileSettings settings, UnitSystem u)
    {
        HeapBuild heap = settings.Heap;
        double half = (heap.RadiusM + heap.CoverThicknessM) * PerM;
        double width = (4 * half) + (3 * Margin);
        double height = Math.Max(2 * half, (heap.HeightM + heap.CoverThicknessM) * PerM) + Head + 50;
        double cut = Margin + half;
        double above = cut + (2 * half) + Margin;
        double ground = height - 50;
        double middle = Head + half;
        List<object> shapes =
        [
            El("title", "The heap to scale: cut open, and from above"),
            Word("name", Margin, 16, "Cut open"), Word("name", above - half, 16, "From above"),
            .. Section(heap, cut, ground), .. Plan(heap, above, middle), .. Probes(settings, cut, ground, above, middle),
            .. Sizes(heap, cut, ground, u), .. ScaleBar(above - half, ground + 36, u),
        ];
        return new XElement(
            "svg", new XAttribute("class", "drawing"), new XAttribute("role", "img"),
            new XAttribute("viewBox", $"0 0 {Text(width)} {Text(height)}"), shapes);
    }

    private static IEnumerable<XElement> Section(HeapBuild heap, double x, double ground)
    {
        double cover = heap.CoverThicknessM * PerM;
        double wide = heap.RadiusM * PerM;
        double high = heap.HeightM * PerM;
        yield return Shape(
            "rect", "cover", ("x", x - wide - cover), ("y", ground - high - cover), ("width", 2 * (wide + cover)), ("height", high + cover));
        yield return Shape("rect", "body", ("x", x - wide), ("y", ground - high), ("width", 2 * wide), ("height", high));
        yield return Shape(
            "line", "ground", ("x1", x - wide - cover - 15), ("x2", x + wide + cover + 15), ("y1", ground), ("y2", ground));
        if (heap.DrumLitres > 0)
        {
            double drum = DrumWidthM(heap) * PerM;
            yield return Shape(
                "rect", "drum", ("x", x - (drum / 2)), ("y", ground - (high / 2) - (drum * DrumShape / 2)), ("width", drum), ("height", drum * DrumShape));
        }

        foreach (double share in TurnHeights(heap))
        {
            foreach (int side in new[] { -1, 1 })
            {
                yield return Shape(
                    "circle", "turn", ("cx", x + (side * heap.Coil.RadiusM * PerM)), ("cy", ground - (high * share)), ("r", 2.5));
            }
        }

        if (heap.Duct.LengthM > 0)
        {
            foreach (double share in new[] { 0.25, 0.75 })
            {
                foreach (int side in new[] { -1, 1 })
                {
                    yield return Shape(
                        "circle", "duct", ("cx", x + (side * heap.Duct.RadiusM * PerM)), ("cy", ground - (high * share)), ("r", heap.Duct.DiameterM * PerM / 2));
                }
            }
        }
    }

    private static IEnumerable<XElement> Plan(HeapBuild heap, double x, double y)
    {
        XElement Ring(string style, double radiusM) => Shape("circle", style, ("cx", x), ("cy", y), ("r", radiusM * PerM));
        yield return Ring("cover", heap.RadiusM + heap.CoverThicknessM);
        yield return Ring("body", heap.RadiusM);
        if (heap.Coil.LengthM > 0)
        {
            yield return Ring("turn-ring", heap.Coil.RadiusM);
        }

        if (heap.Duct.LengthM > 0)
        {
            XElement duct = Ring("duct-ring", heap.Duct.RadiusM);
            duct.SetAttributeValue("stroke-width", Text(heap.Duct.DiameterM * PerM));
            yield return duct;
        }

        if (heap.DrumLitres > 0)
        {
            yield return Ring("drum", DrumWidthM(heap) / 2);
        }
    }

    // In the plan the probes stand fanned out, so that their numbers do not cover each other.
    private static IEnumerable<XElement> Probes(PileSettings settings, double cut, double ground, double above, double middle)
    {
        ProbeFit[] probes = HeapProbes(settings);
        for (int i = 0; i < probes.Length; i++)
        {
            string number = (i + 1).ToString(CultureInfo.InvariantCulture);
            double angle = (i + 0.5) * Math.PI / (2 * Math.Max(1, probes.Length));
            foreach ((double x, double y) in new[]
            {
                (cut + (probes[i].RadiusM * PerM), ground - (probes[i].HeightM * PerM)),
                (above + (probes[i].RadiusM * PerM * Math.Cos(angle)), middle - (probes[i].RadiusM * PerM * Math.Sin(angle))),
            })
            {
                yield return Shape("circle", "probe", ("cx", x), ("cy", y), ("r", 5));
                yield return Word("probe-number", x + 7, y - 6, number);
            }
        }
    }

    private static IEnumerable<XElement> Sizes(HeapBuild heap, double x, double ground, UnitSystem u)
    {
        double cover = heap.CoverThicknessM * PerM;
        double wide = heap.RadiusM * PerM;
        double high = heap.HeightM * PerM;
        yield return Shape("line", "size", ("x1", x - wide), ("x2", x + wide), ("y1", ground + 14), ("y2", ground + 14));
        yield return Word("size-word", x, ground + 31, $"{Show.Length(2 * heap.RadiusM, u)} across");
        double left = x - wide - cover - 10;
        yield return Shape("line", "size", ("x1", left), ("x2", left), ("y1", ground - high), ("y2", ground));
        XElement word = Word("size-word", 0, 0, $"{Show.Length(heap.HeightM, u)} high");
        word.SetAttributeValue("transform", $"translate({Text(left - 5)} {Text(ground - (high / 2))}) rotate(-90)");
        yield return word;
    }

    private static IEnumerable<XElement> ScaleBar(double x, double y, UnitSystem u)
    {
        double metres = u == UnitSystem.Metric ? 1 : 0.9144;
        yield return Shape("line", "scale", ("x1", x), ("x2", x + (metres * PerM)), ("y1", y), ("y2", y));
        yield return Word("scale-word", x + (metres * PerM) + 8, y + 5, $"{Show.Length(metres, u)}, both drawings");
    }

    /// <summary>The probes that sit in the heap, in the order of their numbers.</summary>
    public static ProbeFit[] HeapProbes(PileSettings settings) =>
        [.. settings.Rig.Probes.Where(p => p.RadiusM > 0 || p.HeightM > 0).OrderBy(p => p.RadiusM)];

    private static IEnumerable<double> TurnHeights(HeapBuild heap)
    {
        if (heap.Coil.LengthM <= 0)
        {
            return [];
        }

        int shown = Math.Clamp((int)Math.Round(CoilSketching.Turns(heap.Coil)), 1, MostTurnsDrawn);
        return Enumerable.Range(0, shown).Select(i => 0.15 + (0.7 * (i + 0.5) / shown));
    }

    private static double DrumWidthM(HeapBuild heap) => Math.Cbrt(4 * heap.DrumLitres / 1000 / (Math.PI * DrumShape));

    private static string Text(double number) => number.ToString("0.#", CultureInfo.InvariantCulture);
}
