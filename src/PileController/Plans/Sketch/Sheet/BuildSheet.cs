using System.Globalization;
using PileController.Settings;
using PileController.Units;
using static PileController.Plans.Sketch.Sheet.Mark;

namespace PileController.Plans.Sketch.Sheet;

/// <summary>One printable page to build by.</summary>
internal static class BuildSheet
{
    /// <summary>The page.</summary>
    /// <param name="settings">The holding, checked.</param>
    /// <param name="sketch">Its sketch.</param>
    /// <param name="embedStyle">True for a file that stands by itself; false for the panel, whose rules let no style stand in the page.</param>
    public static string Html(PileSettings settings, PlanSketch sketch, bool embedStyle)
    {
        UnitSystem u = settings.Units;
        string name = Clean(settings.Site.Name);
        return PrintedPage.Html(
            $"Build sheet: {name}", embedStyle,
            El("p", Summary(sketch, u)),
            SheetDrawing.Of(settings, u),
            Class(
                "columns", "div",
                SheetLists.Materials(settings, sketch, u), SheetLists.Pipes(settings, sketch, u),
                SheetLists.Probes(settings, u), SheetLists.Order(settings, u),
                SheetLists.Cautions(sketch, u)),
            SheetLists.Signatures());
    }

    private static string Summary(PlanSketch sketch, UnitSystem u)
    {
        string lit = sketch.Heap.LitOnDay is double day
            ? $"lights on day {day.ToString("F0", CultureInfo.InvariantCulture)}"
            : "does not light in this weather";
        return $"By this reckoning the heap {lit} and bears {Show.Power(sketch.Coil.MeanDrawnWatts, u)} on the mean; the house loses "
            + $"{Show.Power(sketch.House.DesignLossWatts, u)} on its design night.";
    }
}
