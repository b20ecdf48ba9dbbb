using PileController.Panel.Commands;
using PileController.Panel.Now;
using PileController.Physics.Heaps;
using PileController.Plans.Sketch;
using PileController.Plans.Sketch.Sheet;
using PileController.Settings;
using PileController.Units;

namespace PileController.Panel.Planning;

/// <summary>
/// <c>GET /api/plan</c>: what the heap gives as built, or as a grower tries it; <c>GET /api/plan/sheet</c>: the sheet to
/// build it by. Both change nothing.
/// </summary>
internal static class PlanApi
{
    private const int LongestPage = 40;

    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/plan", (HttpRequest request, PanelSetup setup, PlanDesk desk) =>
        {
            PlanChanges changes = PlanChanges.Parse(request.Query, "page");
            return AnswerAsync(request, setup, desk, changes, (tried, sketch) => TypedResults.Ok(BodyOf(setup, changes, tried.Heap, sketch)));
        });
        api.MapMethods("/plan/sheet", Looking.Methods, (HttpRequest request, PanelSetup setup, PlanDesk desk) =>
        {
            UnitSystem units = UnitsOf(request, setup);
            PlanChanges changes = PlanChanges.Parse(request.Query, "page", "units");
            return AnswerAsync(request, setup, desk, changes, (tried, sketch) => TypedResults.Text(
                BuildSheet.Html(tried with { Units = units }, sketch, embedStyle: false), "text/html; charset=utf-8"));
        });
    }

    private static async Task<IResult> AnswerAsync(
        HttpRequest request, PanelSetup setup, PlanDesk desk, PlanChanges changes, Func<PileSettings, PlanSketch, IResult> answer)
    {
        PileSettings tried = TriedSettings.Of(setup.Settings, changes);
        if (desk.Ask(PageOf(request), changes.Key, tried, request.HttpContext.RequestAborted) is not { } asked)
        {
            return Answers.Refused(
                StatusCodes.Status503ServiceUnavailable, "Too many pages ask", $"{PlanDesk.MostPages} pages wait for a plan already; try again in some seconds.");
        }

        return await asked is { } sketch
            ? answer(tried, sketch)
            : Answers.Refused(StatusCodes.Status409Conflict, "A newer question came", "A newer question of the same page took the place of this one.");
    }

    private static UnitSystem UnitsOf(HttpRequest request, PanelSetup setup)
    {
        string units = request.Query["units"].ToString();
        PanelUnits chosen = units.Length == 0 ? setup.Units : WireNames.Parse<PanelUnits>(units, "units");
        return chosen == PanelUnits.Metric ? UnitSystem.Metric : UnitSystem.Us;
    }

    private static string PageOf(HttpRequest request)
    {
        string page = request.Query["page"].ToString();
        return page.Length <= LongestPage && page.All(char.IsAsciiLetterOrDigit)
            ? page
            : throw BodyFields.Fault("page", "this text", $"up to {LongestPage} letters and digits");
    }

    private static PlanBody BodyOf(PanelSetup setup, PlanChanges changes, HeapBuild tried, PlanSketch sketch)
    {
        HeapBuild built = setup.Settings.Heap;
        return new PlanBody(
            PlanSeason.Start.ToString("yyyy-MM-dd"), PlanSeason.Days, PlanSeason.Weather,
            [.. TryField.All.Where(field => changes.Of(field) is not null).Select(field => new ChangeBody(field.Name, field.Of(built), field.Of(tried)))],
            [.. TryField.All.Select(field => new LimitsBody(field.Name, field.Of(built), field.Least, field.Most(tried)))],
            NowReport.HeapOf(built), NowReport.HeapOf(tried), sketch);
    }
}
