using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Panel.Commands;
using PileController.Records;
using PileController.Service;

namespace PileController.Panel.Queries;

/// <summary>One decision in a list.</summary>
internal sealed record DecisionBody(
    long Sequence, long UtcMs, string LocalTime, IReadOnlyList<string> Kinds, string Mode, string Curb, double WantWatts,
    double MeansWatts, double GrantWatts, double WaterDrawWatts, double ActiveZoneC, double? HouseC, string Why, string? Note);

/// <summary>The answer to a question for decisions, newest first.</summary>
internal sealed record DecisionsBody(IReadOnlyList<DecisionBody> Decisions, bool More);

/// <summary><c>GET /api/decisions</c>.</summary>
internal static class DecisionsApi
{
    private const long Fortnight = 14 * 86_400_000L;

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/decisions", GetAsync);

    private static async Task<IResult> GetAsync(
        HttpContext context, IPileRecord record, PanelFeed feed, PanelSetup setup, string? from, string? to, string? mode,
        string? curb, string? text, string? limit)
    {
        long end = Moments.Instant("to", to, (feed.Latest?.Decision.At.UtcMilliseconds ?? 0) + 1);
        long start = Moments.Instant("from", from, Math.Max(0, end - Fortnight));
        if (start >= end)
        {
            throw BodyFields.Fault("from", LocalTimes.Text(start, 0), $"a time before {LocalTimes.Text(end, 0)}");
        }

        int most = 200;
        if (limit is not null && (!int.TryParse(limit, out most) || most is < 1 or > 1000))
        {
            throw BodyFields.Fault("limit", limit, "a whole number from 1 to 1000");
        }

        // One more than asked for tells whether there are more.
        DecisionAsk ask = new(start, end)
        {
            Kinds = KindsOf(context.Request),
            Mode = string.IsNullOrEmpty(mode) ? null : WireNames.Parse<Mode>(mode, "mode"),
            Curb = string.IsNullOrEmpty(curb) ? null : WireNames.Parse<Curb>(curb, "curb"),
            Text = string.IsNullOrEmpty(text) ? null : text,
            Limit = most + 1,
        };
        IReadOnlyList<DecisionLine> lines = await record.DecisionsAsync(ask, context.RequestAborted);
        return TypedResults.Ok(new DecisionsBody(
            [.. lines.Take(most).Select(line => BodyOf(line, setup.OffsetMinutesAt(line.UtcMilliseconds)))], lines.Count > most));
    }

    private static DecisionKinds? KindsOf(HttpRequest request)
    {
        DecisionKinds? kinds = null;
        foreach (string name in request.Query["kind"].SelectMany(text => (text ?? string.Empty).Split(',', StringSplitOptions.RemoveEmptyEntries)))
        {
            DecisionKinds kind = WireNames.Parse<DecisionKinds>(name.Trim(), "kind");
            kinds = (kinds ?? DecisionKinds.Steady) | kind;
        }

        return kinds;
    }

    private static DecisionBody BodyOf(DecisionLine line, int offsetMinutes) => new(
        line.Sequence, line.UtcMilliseconds, LocalTimes.Text(line.UtcMilliseconds, offsetMinutes), WireNames.Flags(line.Kinds),
        WireNames.Of(line.Mode), WireNames.Of(line.Curb), line.WantWatts, line.MeansWatts, line.GrantWatts, line.WaterWatts,
        line.ActiveZoneCelsius, line.HouseCelsius, line.Why, line.Note);
}
