using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Control;
using PileController.Ledgers;
using PileController.Ledgers.Counting;
using PileController.Ledgers.Editing;
using PileController.Ledgers.Pages;
using PileController.Panel.Commands;
using PileController.Plans.Money;
using PileController.Service;
using PileController.Units;

namespace PileController.Panel.Ledgers;

/// <summary><c>/api/ledger</c>: the grower's book and the changes to it.</summary>
internal static class LedgerApi
{
    private const string OnFailure = "The book fails";

    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        RouteGroupBuilder ledger = api.MapGroup("/ledger").AddEndpointFilter(AnswerRefusalsAsync);
        ledger.MapGet("", (PanelSetup setup, string? season, CancellationToken stop) => LookAsync(setup, season, stop));
        ledger.MapMethods("/report", Looking.Methods, ReportAsync);
        ledger.MapPost("/notes", NoteAsync);
        ledger.MapPost("/parts", PartAsync);
        ledger.MapPost("/mass", MassAsync);
        ledger.MapPost("/season", SeasonAsync);
    }

    private static async Task<IResult> LookAsync(PanelSetup setup, string? season, CancellationToken stop)
    {
        LedgerView view = await Desk(setup).LookAsync(stop);
        return Page(view, season is null && view.Book.Seasons.Count == 0 ? null : EntryEdits.Find(view.Book, season));
    }

    private static async Task<IResult> ReportAsync(PanelSetup setup, string? season, string? units, CancellationToken stop)
    {
        PanelUnits chosen = string.IsNullOrEmpty(units) ? setup.Units : WireNames.Parse<PanelUnits>(units, "units");
        LedgerView view = await Desk(setup).LookAsync(stop);
        return TypedResults.Text(
            SeasonReport.Html(
                view, EntryEdits.Find(view.Book, season), chosen == PanelUnits.Metric ? UnitSystem.Metric : UnitSystem.Us, embedStyle: false),
            "text/html; charset=utf-8");
    }

    private static async Task<IResult> NoteAsync(HttpRequest request, PanelSetup setup, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "text", "who", "season");
        string text = Needed(body, "text", LedgerLimits.LongestNote);
        string? season = body.Text("season", LedgerLimits.LongestName);
        Hand by = By(body, request, feed);
        return await EditAsync(setup, request, season, (view, _) => EntryEdits.Note(view.Book, season, new NoteEntry(text, by)));
    }

    private static async Task<IResult> PartAsync(HttpRequest request, PanelSetup setup, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "name", "count", "priceEach", "origin", "who", "season");
        string? season = body.Text("season", LedgerLimits.LongestName);
        PartEntry part = new(
            Needed(body, "name", LedgerLimits.LongestName), body.Number("count", 0, LedgerLimits.MostCount, 1), body.Number("priceEach", 0, LedgerLimits.MostPrice),
            body.Choice<PartOrigin>("origin") == PartOrigin.Reused, By(body, request, feed));
        return await EditAsync(setup, request, season, (view, _) => EntryEdits.Part(view.Book, season, part));
    }

    private static async Task<IResult> MassAsync(HttpRequest request, PanelSetup setup, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "way", "kilograms", "known", "how", "who", "season");
        string? season = body.Text("season", LedgerLimits.LongestName);
        MassEntry mass = new(
            body.Choice<MassWay>("way"), body.Number("kilograms", LedgerLimits.LeastKilograms, LedgerLimits.MostKilograms),
            body.Choice<Known>("known"), body.Text("how", LedgerLimits.LongestHow), By(body, request, feed));
        return await EditAsync(setup, request, season, (view, _) => EntryEdits.Mass(view.Book, season, mass));
    }

    private static async Task<IResult> SeasonAsync(HttpRequest request, PanelSetup setup, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(
            request, "act", "name", "heapBuilt", "closedOn", "fuel", "pricePerUnit", "electricityPerKWh", "money", "who");
        SeasonAct act = body.Choice<SeasonAct>("act");
        Hand by = By(body, request, feed);
        DateOnly today = LedgerRules.Of(setup.Settings).DateOf(by.AtUtcMilliseconds);
        string? name = act == SeasonAct.Open ? Needed(body, "name", LedgerLimits.LongestName) : body.Text("name", LedgerLimits.LongestName);
        DateOnly? built = Date(body, "heapBuilt");
        DateOnly closedOn = Date(body, "closedOn") ?? today;
        string? fuelName = body.Text("fuel", LedgerLimits.LongestName);
        if (fuelName is not null && Fuels.All.All(f => f.Name != fuelName))
        {
            throw BodyFields.Fault("fuel", fuelName, string.Join(", ", Fuels.All.Select(f => f.Name)));
        }

        FuelEntry Changed(FuelEntry fuel) => LedgerFuel.Changed(
            fuel, fuelName, setup.Settings.Plan.Prices, body.Number("pricePerUnit", 0, LedgerLimits.MostPrice, double.NaN),
            body.Number("electricityPerKWh", 0, LedgerLimits.MostPrice, double.NaN), body.Text("money", 10), by);

        // Read before the book is taken up, so that a wrong field is told as one.
        FuelEntry opening = Changed(LedgerFuel.Of(setup.Settings.Plan.Prices, by));
        return await EditAsync(setup, request, null, (view, memory) => act switch
        {
            SeasonAct.Open => SeasonEdits.Open(view.Book, name!, built ?? today, today, opening),
            SeasonAct.Change => SeasonEdits.Change(view.Book, name, built, today, Changed),
            _ => SeasonEdits.Close(view.Book, closedOn, today, by, season => LedgerLessons.Of(view, memory, season)),
        });
    }

    private static async Task<IResult> EditAsync(PanelSetup setup, HttpRequest request, string? season, Func<LedgerView, Memory?, Book> change)
    {
        LedgerView view = await Desk(setup).EditAsync(change, request.HttpContext.RequestAborted);
        return Page(view, EntryEdits.Find(view.Book, season));
    }

    private static JsonHttpResult<LedgerPage> Page(LedgerView view, SeasonEntry? season) => TypedResults.Json(LedgerPage.Of(view, season), LedgerJson.Options);

    private static LedgerDesk Desk(PanelSetup setup) => setup.Ledger ?? throw new BookFileException("No folder is set in which a book could be kept.");

    private static string Needed(BodyFields body, string field, int longest) =>
        body.Text(field, longest) ?? throw BodyFields.Fault(field, "nothing", $"1 to {longest} characters of text");

    private static Hand By(BodyFields body, HttpRequest request, PanelFeed feed) => new(
        Needed(body, "who", LedgerLimits.LongestWho), $"page, {request.HttpContext.Connection.RemoteIpAddress?.ToString() ?? "address not known"}",
        feed.Latest?.Decision.At.UtcMilliseconds ?? throw new LedgerRefusedException("The controller has not finished its first tick."));

    private static DateOnly? Date(BodyFields body, string field) => body.Text(field, 10) is not { } text ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out DateOnly date) ? date
        : throw BodyFields.Fault(field, text, "a date as 2026-01-20");

    private static async ValueTask<object?> AnswerRefusalsAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        try
        {
            return await next(context);
        }
        catch (LedgerRefusedException refused)
        {
            return Answers.Refused(StatusCodes.Status409Conflict, "Not so in this book", refused.Message);
        }
        catch (IOException failed) when (failed is not Microsoft.AspNetCore.Http.BadHttpRequestException)
        {
            return Answers.Refused(StatusCodes.Status503ServiceUnavailable, OnFailure, failed.Message);
        }
    }

    private enum SeasonAct
    {
        Open = 0,
        Change,
        Close,
    }

    private enum PartOrigin
    {
        Bought = 0,
        Reused,
    }
}
