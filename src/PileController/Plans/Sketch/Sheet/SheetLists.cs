using System.Globalization;
using System.Xml.Linq;
using PileController.Panel.Now;
using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;
using PileController.Rigs;
using PileController.Settings;
using PileController.Units;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Plans.Sketch.Sheet;

/// <summary>The lists of the sheet: what to fetch, how to build, what to mind, who signs.</summary>
internal static class SheetLists
{
    // Share of the height the turns are spread over.
    private const double TurnsSpan = 0.7;

    public static XElement Materials(PileSettings settings, PlanSketch sketch, UnitSystem u)
    {
        HeapBuild heap = settings.Heap;
        double outer = heap.RadiusM + heap.CoverThicknessM;
        double coverM3 = (Math.PI * outer * outer * (heap.HeightM + heap.CoverThicknessM)) - sketch.Heap.VolumeM3;
        List<(string, string)> rows =
        [
            ("Chips as laid", $"{PlanShow.Bulk(HeapSketching.BedM3(heap), u)}, {Show.Mass(heap.WetMassKg, u)} wet, {Number(sketch.Heap.MoisturePercent, "F0")} % water"),
            ("of it dry matter", $"{Show.Mass(sketch.Heap.DryMassKg, u)}, {Number(100 * heap.FastFraction, "F0")} % of that greens or manure"),
        ];
        if (coverM3 > 0)
        {
            rows.Add(("Dry cover", $"{PlanShow.Bulk(coverM3, u)}, {PlanShow.Small(heap.CoverThicknessM, u)} thick"));
        }

        if (heap.DrumLitres > 0)
        {
            // A drum raised on boards loses less to the ground (common practice, no source).
            rows.Add(("Drum", $"{Show.Volume(heap.DrumLitres, u)}, on boards {PlanShow.Small(0.0381, u)} thick"));
        }

        return Part("Materials", Rows(rows));
    }

    public static XElement Pipes(PileSettings settings, PlanSketch sketch, UnitSystem u)
    {
        (HeapBuild heap, LoopBuild loop, SketchCoil coil) = (settings.Heap, settings.Loop, sketch.Coil);
        List<(string, string)> rows = [];
        if (coil.LengthM > 0)
        {
            rows.Add(("Turns", $"{Show.Length(coil.LengthM, u)}, {PlanShow.Small(heap.Coil.OuterDiameterM, u)} outside, {PlanShow.Small(heap.Coil.InnerDiameterM, u)} bore"));
            rows.Add(("laid", $"{Number(coil.Turns, "F1")} turns at {Show.Length(coil.RadiusM, u)}, {PlanShow.Small(TurnsSpan * heap.HeightM / Math.Max(1, coil.Turns), u)} apart"));
        }

        rows.Add(("Lines", $"two of {Show.Length(loop.LineLengthM, u)}, {PlanShow.Small(loop.LineInnerDiameterM, u)} bore, insulated"));
        rows.Add(("House pipe", $"{Show.Length(loop.HousePipeM, u)}, {PlanShow.Small(loop.LineInnerDiameterM, u)} bore"));
        rows.Add(("Tank", Show.Volume(loop.TankLitres, u)));
        if (heap.Duct.LengthM > 0)
        {
            rows.Add(("Ducts", $"{Show.Length(heap.Duct.LengthM, u)}, {PlanShow.Small(heap.Duct.DiameterM, u)} wide, at {Show.Length(heap.Duct.RadiusM, u)}"));
        }

        rows.Add(("Pump point", $"{Show.WaterFlow(sketch.Loop.FlowLitresPerMinute, u)} at {Show.Length(sketch.Loop.HeadM, u)} of head, {Number(sketch.Loop.PumpWatts, "F0")} W"));
        rows.Add(("Air", sketch.Loop.PurgesAir ? "carried along at full flow" : "not carried along: a vent at every high point"));
        return Part("Pipe, pump and air", Rows(rows));
    }

    public static XElement Probes(PileSettings settings, UnitSystem u)
    {
        ProbeFit[] probes = SheetDrawing.HeapProbes(settings);
        return Part("Probes in the heap", Rows(probes.Select((p, i) => (
            $"{(i + 1).ToString(CultureInfo.InvariantCulture)} {ProbeWords.Label(p.Channel)}",
            $"{Show.Length(p.RadiusM, u)} from the axis, {Show.Length(p.HeightM, u)} up"))));
    }

    public static XElement Order(PileSettings settings, UnitSystem u)
    {
        HeapBuild heap = settings.Heap;
        List<string> steps = ["Level the place, away from walls and fences; lay a bed of coarse brush for air. Find buried lines before you dig."];
        if (heap.DrumLitres > 0)
        {
            steps.Add("Stand the drum on its boards in the middle. Test it and its joints with cold water before it is buried.");
        }

        steps.Add($"Build up in layers of {Show.Length(0.3, u)}, wetting each: a handful squeezed gives a few drops and no more.");
        if (heap.Duct.LengthM > 0)
        {
            steps.Add("Lay the ducts as their height comes, sloping so that water runs out of them.");
        }

        if (heap.Coil.LengthM > 0)
        {
            steps.Add("Lay the turns as their height comes, in one length, no joint inside the heap, no bend tighter than eight times the pipe.");
        }

        steps.Add("Set each probe as its height comes, one against the turns; write its number on its cable.");
        steps.Add("Fill the loop slowly, vent it, prove flow, and leave it an hour at full flow looking for drips.");
        steps.Add("Cover the heap. Draw nothing before the controller says that it has lit.");
        return Part("Order of building", new XElement("ol", steps.Select(step => El("li", step))));
    }

    public static XElement Cautions(PlanSketch sketch, UnitSystem u) => Part(
        "Mind",
        Class("cautions", "ul", [.. SketchText.Words(sketch.Cautions, u).Select(text => El("li", text.Replace(" " + Say.LocalCodes, "", StringComparison.Ordinal)))]),
        Class("codes", "p", Say.LocalCodes));

    public static XElement Signatures() => Class(
        "signatures", "section",
        El("p", "Built by, date"), El("p", "Water checked by, date"), El("p", "Electricity checked by, date"));

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
