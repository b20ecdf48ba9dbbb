using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PileController.Records.Export;

/// <summary>Writes what a record was asked for as JSON lines: one object a line, camelCase, the unit in the key.</summary>
public static class JsonLinesExport
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    /// <summary>Writes a series.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="series">Name of the series; stands in every line with its unit.</param>
    /// <param name="points">What <see cref="IPileRecord.SamplesAsync"/> answered.</param>
    /// <exception cref="ArgumentException">There is no such series.</exception>
    public static void Samples(TextWriter to, string series, IEnumerable<SeriesPoint> points)
    {
        RecordSeries found = RecordSeries.Find(series);
        foreach (SeriesPoint point in points)
        {
            Line(to, new
            {
                Series = found.Name,
                found.Unit,
                Time = Csv.Moment(point.UtcMilliseconds),
                point.Least,
                point.Mean,
                point.Most,
                point.Count,
            });
        }
    }

    /// <summary>Writes decision lines in the order given.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="lines">What <see cref="IPileRecord.DecisionsAsync"/> answered.</param>
    public static void Decisions(TextWriter to, IEnumerable<DecisionLine> lines)
    {
        foreach (DecisionLine line in lines)
        {
            Line(to, line);
        }
    }

    private static void Line<T>(TextWriter to, T value)
    {
        to.Write(JsonSerializer.Serialize(value, Options));
        to.Write('\n');
    }
}
