using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Commissioning;
using PileController.Commissioning.Sheets;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Ledgers;
using PileController.Ledgers.Pages;
using PileController.Panel.Commands;
using PileController.Service;

namespace PileController.Panel.Commissioning;

/// <summary><c>/api/commissioning</c>: test the rig, step by step, and keep what was proven on the sheet.</summary>
internal static class CommissioningApi
{
    private const string Refusal = "Not now";
    private const string Busy = "Another test runs. End it first.";

    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        RouteGroupBuilder tests = api.MapGroup("/commissioning");
        tests.MapGet("", (PanelSetup setup, CommissioningDesk desk) => Body(setup, desk));
        tests.MapMethods("/sheet", Looking.Methods, Page);
        tests.MapPost("", BeginAsync);
        tests.MapPost("/answer", AnswerAsync);
        tests.MapPost("/keep", KeepAsync);
        tests.MapDelete("", End);
    }

    private static JsonHttpResult<CommissioningBody> Body(PanelSetup setup, CommissioningDesk desk)
    {
        Sheet sheet = Sheet.Empty;
        string? fault = null;
        try
        {
            sheet = setup.Sheet?.Read() ?? Sheet.Empty;
        }
        catch (SheetFileException unreadable)
        {
            fault = unreadable.Message;
        }

        return TypedResults.Json(CommissioningBody.Of(setup.Settings, desk.Test, sheet, fault), LedgerJson.Options);
    }

    private static IResult Page(PanelSetup setup)
    {
        try
        {
            return TypedResults.Text(SheetPage.Html(setup.Sheet?.Read() ?? Sheet.Empty, setup.Settings, embedStyle: false), "text/html; charset=utf-8");
        }
        catch (SheetFileException unreadable)
        {
            return Unkept(unreadable.Message);
        }
    }

    private static async Task<IResult> BeginAsync(HttpRequest request, PanelSetup setup, CommissioningDesk desk, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "test", "probes", "who");
        string id = body.Text("test", 40) ?? throw BodyFields.Fault("test", "nothing", string.Join(", ", Catalogue.Ids));
        if (!Catalogue.Ids.Contains(id))
        {
            throw BodyFields.Fault("test", id, string.Join(", ", Catalogue.Ids));
        }

        TestAsk ask = new() { Channels = [.. body.List("probes").Select(ChannelOf)] };
        string who = Who(body);
        if (Catalogue.WhyNot(id, setup.Settings, ask) is { } unfit)
        {
            return Answers.Refused(StatusCodes.Status409Conflict, Refusal, unfit);
        }

        if (desk.Test is { Walk.Ended: false })
        {
            return Answers.Refused(StatusCodes.Status409Conflict, Refusal, Busy);
        }

        Procedure procedure = Catalogue.Of(id, setup.Settings, ask);
        return WhyNotNow(procedure, feed.Latest?.Decision, desk.IsSettling) is { } why ? Answers.Refused(StatusCodes.Status409Conflict, Refusal, why)
            : desk.TryBegin(procedure, who, CommandPost.AskerOf(request.HttpContext)) ? Body(setup, desk)
            : Answers.Refused(StatusCodes.Status409Conflict, Refusal, Busy);
    }

    // The test's own holds would end what somebody else has asked for, and give back what is theirs.
    private static string? WhyNotNow(Procedure procedure, Decision? decision, bool settling) => decision?.Mode switch
    {
        null => "The controller has not finished its first tick.",
        Mode.Tripped => "The rig is tripped. Clear the trip once its cause is gone.",
        Mode.Servicing when !procedure.IsAtRest => "The outputs are locked off for work on the rig. End servicing first.",
        not Mode.Servicing when procedure.Id == "wind-down" => "Lock the outputs off for work on the rig first: what is being taken apart must not start.",
        _ when settling => "What the last test held is being given back. Try again in a moment.",
        _ when decision.Hands is [var held, ..] && procedure.Moving.Count > 0 => $"{held.Who} holds the {Procedure.Name(held.Actuator)} by hand. Give back what is held by hand first.",
        _ => null,
    };

    private static async Task<IResult> AnswerAsync(HttpRequest request, PanelSetup setup, CommissioningDesk desk)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "step", "figure", "text");
        int step = (int)body.Number("step", 1, 1000);
        Question? question = desk.Test?.Walk.Phase?.Question;
        double? figure = question is { Kind: not AnswerKind.Text } asks ? body.Number("figure", asks.Least, asks.Most) : null;
        string? text = question is { Kind: AnswerKind.Text } ? body.Text("text", Question.LongestText) : null;
        return desk.TryAnswer(step, figure, text)
            ? Body(setup, desk)
            : Answers.Refused(StatusCodes.Status409Conflict, Refusal, "That step waits for no answer any more.");
    }

    private static JsonHttpResult<CommissioningBody> End(PanelSetup setup, CommissioningDesk desk)
    {
        desk.End();
        return Body(setup, desk);
    }

    private static async Task<IResult> KeepAsync(HttpRequest request, PanelSetup setup, CommissioningDesk desk, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "who");
        string who = Who(body);
        if (setup.Sheet is not { } sheet)
        {
            return Unkept("No folder is set in which a sheet could be kept.");
        }

        if (desk.TryClaim() is not { } test)
        {
            return Answers.Refused(StatusCodes.Status409Conflict, Refusal, "There is no finished test that is not on the sheet yet.");
        }

        Hand by = new(who, $"page, {request.HttpContext.Connection.RemoteIpAddress?.ToString() ?? "address not known"}", feed.Latest?.Decision.At.UtcMilliseconds ?? 0);
        try
        {
            sheet.Add(new SheetEntry(test.Walk.Procedure.Id, test.Walk.Procedure.Title, by, setup.Settings.Rig.Simulated, test.Walk.Found()));
        }
        catch (IOException failed)
        {
            desk.GiveBack(test);
            return Unkept(failed.Message);
        }

        try
        {
            if (test.Walk.Procedure.Id == "wind-down" && setup.Ledger is { } ledger)
            {
                await ledger.EditAsync((view, _) => SeasonEnd.Enter(view.Book, test.Walk, by), CancellationToken.None);
            }
        }
        catch (IOException failed)
        {
            return Unkept($"It is on the sheet, but weight and notes did not get into the ledger; enter them there. {failed.Message}");
        }

        return Body(setup, desk);
    }

    private static string Who(BodyFields body) => body.Text("who", 40) ?? throw BodyFields.Fault("who", "nothing", "1 to 40 characters of text");

    private static Channel ChannelOf(string name) => ChannelTable.TryFind(name, out ChannelInfo info)
        ? info.Channel
        : throw BodyFields.Fault("probes", name, string.Join(", ", ChannelTable.All.Where(row => row.Unit == "°C").Select(row => row.Name)));

    private static ProblemHttpResult Unkept(string why) => Answers.Refused(StatusCodes.Status503ServiceUnavailable, "The sheet fails", why);
}
