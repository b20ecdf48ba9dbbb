using PileController.Alarms;
using PileController.Panel.Commands;
using PileController.Service;

namespace PileController.Panel.Alarms;

/// <summary><c>GET /api/alarms</c>, and <c>POST /api/alarms/seen|shelve|unshelve</c>, each with <c>key</c> and <c>who</c>.</summary>
internal static class AlarmsApi
{
    private const double LongestMinutes = AlarmHands.MostShelvedSeconds / 60;

    /// <summary>Adds the routes.</summary>
    public static void Map(RouteGroupBuilder api)
    {
        api.MapGet("/alarms", (AlarmDesk desk, PanelFeed feed) => TypedResults.Ok(Body(desk, feed)));
        api.MapPost("/alarms/seen", SeeAsync);
        api.MapPost("/alarms/shelve", ShelveAsync);
        api.MapPost("/alarms/unshelve", UnshelveAsync);
    }

    private static AlarmsBody Body(AlarmDesk desk, PanelFeed feed) => AlarmsReport.Of(desk.Table, desk.State, Now(feed));

    private static async Task<IResult> SeeAsync(HttpRequest request, AlarmDesk desk, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "key", "who");
        int row = Row(body, desk);
        string who = Who(body);
        if (!desk.State.Rows[row].Unseen)
        {
            return Answers.Refused(
                StatusCodes.Status409Conflict, "Nothing to see", $"\"{desk.Table.Rows[row].Name}\" has been seen already, or does not stand.");
        }

        desk.See(row, who, Now(feed));
        return TypedResults.Ok(Body(desk, feed));
    }

    private static async Task<IResult> ShelveAsync(HttpRequest request, AlarmDesk desk, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "key", "minutes", "who");
        int row = Row(body, desk);
        double seconds = 60 * body.Number("minutes", 1, LongestMinutes);
        string who = Who(body);
        if (AlarmHands.WhyNotShelved(desk.Table.Rows[row], seconds) is { } reason)
        {
            return Answers.Refused(StatusCodes.Status409Conflict, "Not for so long", reason);
        }

        desk.Shelve(row, seconds, who, Now(feed));
        return TypedResults.Ok(Body(desk, feed));
    }

    private static async Task<IResult> UnshelveAsync(HttpRequest request, AlarmDesk desk, PanelFeed feed)
    {
        BodyFields body = await BodyFields.ReadAsync(request, "key", "who");
        int row = Row(body, desk);
        string who = Who(body);
        if (!desk.State.Rows[row].Shelved)
        {
            return Answers.Refused(StatusCodes.Status409Conflict, "Not on the shelf", $"\"{desk.Table.Rows[row].Name}\" is not shelved.");
        }

        desk.Unshelve(row, who, Now(feed));
        return TypedResults.Ok(Body(desk, feed));
    }

    private static int Row(BodyFields body, AlarmDesk desk)
    {
        string keys = string.Join(", ", desk.Table.Rows.Select(row => row.Key));
        string key = body.Text("key", 60) ?? throw BodyFields.Fault("key", "nothing", $"one of {keys}");
        int row = desk.Table.IndexOf(key);
        return row >= 0 ? row : throw BodyFields.Fault("key", key, $"one of {keys}");
    }

    private static string Who(BodyFields body) => body.Text("who", 40) ?? throw BodyFields.Fault("who", "nothing", "1 to 40 characters of text");

    // The place's own time: in the demo it runs faster than life.
    private static long Now(PanelFeed feed) => feed.Latest?.Decision.At.UtcMilliseconds ?? 0;
}
