using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;

namespace PileController.Forecasts;

/// <summary>
/// Reads foretold weather: JSON with <c>fromUtc</c>, <c>outsideC</c> and, where there is one, <c>sunWPerM2</c>; or CSV with
/// the header <c>utc,outsideC,sunWPerM2</c>, the last column optional, and a row for each hour.
/// </summary>
internal static class ForecastText
{
    private const string Header = "utc,outsideC";
    private const string SunnyHeader = "utc,outsideC,sunWPerM2";
    private const int MostHours = 20_000;
    private const string MomentAllowed = "a whole hour in UTC such as 2026-01-28T05:00:00Z";
    private static readonly JsonDocumentOptions Shallow = new() { MaxDepth = 4 };

    /// <summary>Reads a text.</summary>
    /// <param name="text">JSON or CSV.</param>
    /// <param name="source">What it is called where the text does not say.</param>
    /// <param name="series">What was read.</param>
    /// <param name="fault">What is wrong: the field or line, what was given, what is allowed.</param>
    public static bool TryRead(
        string text, string source, [NotNullWhen(true)] out ForecastSeries? series, [NotNullWhen(false)] out string? fault)
    {
        try
        {
            series = text.AsSpan().TrimStart().StartsWith("{") ? Json(text, source) : Csv(text, source);
            fault = null;
            return true;
        }
        catch (FormatException wrong)
        {
            series = null;
            fault = wrong.Message;
            return false;
        }
    }

    /// <summary>Reads the JSON form only.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static ForecastSeries Json(string text, string source)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text, Shallow);
            return Json(document.RootElement, source);
        }
        catch (JsonException)
        {
            throw new FormatException("body is text that is no JSON; allowed is a JSON object with fromUtc, outsideC, sunWPerM2, source.");
        }
    }

    private static ForecastSeries Json(JsonElement root, string source)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            throw new FormatException($"body is a JSON {root.ValueKind}; allowed is a JSON object with fromUtc, outsideC, sunWPerM2, source.");
        }

        long? from = null;
        double[]? outside = null;
        double[]? sun = null;
        foreach (JsonProperty field in root.EnumerateObject())
        {
            switch (field.Name)
            {
                case "fromUtc":
                    from = Moment(field.Value.ValueKind == JsonValueKind.String ? field.Value.GetString()! : field.Value.GetRawText(), "fromUtc");
                    break;
                case "outsideC":
                    outside = Numbers(field);
                    break;
                case "sunWPerM2":
                    sun = field.Value.ValueKind == JsonValueKind.Null ? null : Numbers(field);
                    break;
                case "source":
                    source = field.Value.ValueKind == JsonValueKind.String ? field.Value.GetString()! : throw Wrong("source", field.Value.GetRawText(), "a text");
                    break;
                default:
                    throw Wrong(field.Name, "a field nobody knows", "fromUtc, outsideC, sunWPerM2, source");
            }
        }

        return new ForecastSeries(
            from ?? throw Wrong("fromUtc", "missing", MomentAllowed), outside ?? throw Wrong("outsideC", "missing", "a list of numbers"), sun, source);
    }

    private static ForecastSeries Csv(string text, string source)
    {
        string[] lines = text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        string header = lines[0].Trim('\uFEFF', ' ');
        bool sunny = header == SunnyHeader;
        if (!sunny && header != Header)
        {
            throw Wrong("line 1", $"\"{Short(header)}\"", $"the header {SunnyHeader} or {Header}");
        }

        if (lines.Length < 2 || lines.Length > MostHours + 1)
        {
            throw new FormatException($"it has {lines.Length - 1} rows; allowed are 1 to {MostHours}.");
        }

        long from = 0;
        double[] outside = new double[lines.Length - 1];
        double[] sun = new double[outside.Length];
        for (int i = 0; i < outside.Length; i++)
        {
            string where = $"line {i + 2}";
            string[] cells = lines[i + 1].Split(',');
            if (cells.Length != (sunny ? 3 : 2))
            {
                throw Wrong(where, $"\"{Short(lines[i + 1])}\"", $"{(sunny ? 3 : 2)} cells");
            }

            long at = Moment(cells[0].Trim(), $"{where}, utc");
            from = i == 0 ? at : from;
            if (at != from + (i * 3_600_000L))
            {
                throw Wrong($"{where}, utc", cells[0].Trim(), "the hour after the one before");
            }

            outside[i] = Number(cells[1], $"{where}, outsideC");
            sun[i] = sunny ? Number(cells[2], $"{where}, sunWPerM2") : 0;
        }

        return new ForecastSeries(from, outside, sunny ? sun : null, source);
    }

    private static double[] Numbers(JsonProperty field) => field.Value.ValueKind != JsonValueKind.Array
        ? throw Wrong(field.Name, $"a JSON {field.Value.ValueKind}", "a list of numbers")
        : [.. field.Value.EnumerateArray().Select((value, i) => value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number)
            ? number
            : throw Wrong($"{field.Name}[{i}]", Short(value.GetRawText()), "a number"))];

    private static double Number(string text, string field) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? number
            : throw Wrong(field, $"\"{Short(text)}\"", "a number");

    private static long Moment(string text, string field) =>
        DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset moment)
            && text.EndsWith('Z') && moment.ToUnixTimeMilliseconds() % 3_600_000 == 0
            ? moment.ToUnixTimeMilliseconds()
            : throw Wrong(field, $"\"{Short(text)}\"", MomentAllowed);

    private static FormatException Wrong(string field, string given, string allowed) => new($"{field} is {given}; allowed is {allowed}.");

    private static string Short(string text) => text.Length <= 60 ? text : text[..60] + "…";
}
