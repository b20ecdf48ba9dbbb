using System.Globalization;
using PileController.Panel.Commands;
using PileController.Records;
using PileController.Service;

namespace PileController.Panel.Queries;

/// <summary>One series of an answer; a point is [utcMs, least, mean, most, count], nulls for a gap.</summary>
internal sealed record SeriesBody(string Name, string Unit, IReadOnlyList<object?[]> Points);

/// <summary>The answer to a question for samples.</summary>
internal sealed record SamplesBody(long FromUtcMs, long ToUtcMs, double StepSeconds, IReadOnlyList<SeriesBody> Series);

/// <summary><c>GET /api/samples</c>: series from the record, as JSON by points or by columns, or as CSV.</summary>
internal static class SamplesApi
{
    private const long Day = 86_400_000;
    private const int MostPoints = 20_000;
    private const int MostDigits = 9;

    // Steps people read easily; the widest leaves a year some 360 points.
    private static readonly long[] Steps = [10_000, 30_000, 60_000, 300_000, 600_000, 1_800_000, 3_600_000, 10_800_000, Day];

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapGet("/samples", GetAsync);

    private static async Task<IResult> GetAsync(
        HttpRequest request, IPileRecord record, PanelFeed feed, PanelSetup setup, string? from, string? to, string? step, string? format, string? digits,
        string? units)
    {
        IReadOnlyList<(string Name, string Unit)> asked = SeriesNames.Parse(request.Query["channel"]);
        long end = Moments.Instant("to", to, (feed.Latest?.Decision.At.UtcMilliseconds ?? 0) + 1);
        long start = Moments.Instant("from", from, Math.Max(0, end - Day));
        if (start >= end)
        {
            throw BodyFields.Fault("from", LocalTimes.Text(start, 0), $"a time before {LocalTimes.Text(end, 0)}");
        }

        long width = Moments.Span("step", step) ?? Steps.FirstOrDefault(wide => (end - start) / wide <= 500, Day);
        long narrowest = width == 0 ? (long)(setup.Control.TickSeconds * 1000) : width;
        if ((end - start) / narrowest > MostPoints)
        {
            throw BodyFields.Fault("step", step ?? "nothing", $"a step that makes at most {MostPoints} points of this span");
        }

        int? places = Digits(digits);
        PanelUnits read = UnitsOf(units, format);
        IReadOnlyList<IReadOnlyList<SeriesPoint>> answers = await record.SamplesAsync(
            [.. asked.Select(one => one.Name)], start, end, width, request.HttpContext.RequestAborted);
        List<(string Name, string Unit, IReadOnlyList<SeriesPoint> Points)> found =
            [.. asked.Zip(answers, (one, points) => (one.Name, one.Unit, points))];

        return format switch
        {
            null or "json" => TypedResults.Ok(new SamplesBody(
                start, end, width / 1000.0, [.. found.Select(one => new SeriesBody(one.Name, one.Unit, [.. one.Points.Select(point => PointOf(point, places))]))])),
            "columns" => TypedResults.Ok(ColumnsBody.Of(start, end, width, found, places)),
            "csv" => TypedResults.Text(SamplesCsv.Write(ReadUnits.Of(found, read), setup.OffsetMinutesAt), "text/csv; charset=utf-8"),
            _ => throw BodyFields.Fault("format", format, "json, columns or csv"),
        };
    }

    private static int? Digits(string? digits) => digits switch
    {
        null or "" => null,
        _ when int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int places) && places <= MostDigits => places,
        _ => throw BodyFields.Fault("digits", digits, $"how many decimal places values have at most, 0 to {MostDigits}; without it, all"),
    };

    // A table is for a person; whoever reads JSON is a machine and reckons in SI.
    private static PanelUnits UnitsOf(string? units, string? format) =>
        units is null ? PanelUnits.Metric
        : format == "csv" ? WireNames.Parse<PanelUnits>(units, "units")
        : throw BodyFields.Fault("units", units, "nothing, but with format csv");

    private static object?[] PointOf(SeriesPoint point, int? places) =>
    [
        point.UtcMilliseconds, ColumnsBody.Rounded(point.Least, places), ColumnsBody.Rounded(point.Mean, places),
        ColumnsBody.Rounded(point.Most, places), point.Count,
    ];
}
