using System.Text.Json;
using PileController.Access;
using PileController.Panel.Guard;

namespace PileController.Panel.Commands;

/// <summary>A small JSON object from a request, read field by field so that each fault can name its field.</summary>
internal sealed class BodyFields
{
    private readonly Dictionary<string, JsonElement> _fields;

    private BodyFields(Dictionary<string, JsonElement> fields) => _fields = fields;

    /// <summary>Reads the body. An absent body is an object without fields.</summary>
    /// <param name="request">The request.</param>
    /// <param name="known">The fields that are allowed; others are faults.</param>
    /// <exception cref="FieldFaultException">No JSON object, or a field nobody knows.</exception>
    public static async Task<BodyFields> ReadAsync(HttpRequest request, params string[] known)
    {
        Dictionary<string, JsonElement> fields = [];
        try
        {
            using JsonDocument document = await JsonDocument.ParseAsync(
                request.Body, new JsonDocumentOptions { MaxDepth = 4 }, request.HttpContext.RequestAborted);
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                throw Fault("body", $"a JSON {document.RootElement.ValueKind}", "a JSON object");
            }

            foreach (JsonProperty property in document.RootElement.EnumerateObject())
            {
                string name = known.FirstOrDefault(name => name == property.Name)
                    ?? throw Fault(property.Name, "this field", string.Join(", ", known));
                Read(property.Value);
                fields[name] = property.Value.Clone();
            }
        }
        catch (InvalidOperationException)
        {
            throw Fault("body", "text with half of a character", "text of whole characters");
        }
        catch (JsonException)
        {
            throw Fault("body", "text that is no JSON", $"a JSON object with {string.Join(", ", known)}");
        }

        if (fields.TryGetValue("who", out JsonElement who) && who.ValueKind == JsonValueKind.String)
        {
            Told.Of(request.HttpContext).Who = who.GetString();
        }

        return new BodyFields(fields);
    }

    /// <summary>A number within limits.</summary>
    /// <exception cref="FieldFaultException">Absent, no number, or outside.</exception>
    public double Number(string field, double least, double most, double? absent = null)
    {
        string allowed = $"a number from {least} to {most}";
        if (!_fields.TryGetValue(field, out JsonElement value))
        {
            return absent ?? throw Fault(field, "nothing", allowed);
        }

        return value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number) && number >= least && number <= most
            ? number
            : throw Fault(field, Shown(value), allowed);
    }

    /// <summary>One of a set of words.</summary>
    /// <exception cref="FieldFaultException">Absent or another word.</exception>
    public T Choice<T>(string field)
        where T : struct, Enum =>
        _fields.TryGetValue(field, out JsonElement value)
            ? WireNames.Parse<T>(value.ValueKind == JsonValueKind.String ? value.GetString()! : Shown(value), field)
            : throw Fault(field, "nothing", WireNames.List<T>());

    /// <summary>A text, trimmed, all of which can be seen.</summary>
    /// <exception cref="FieldFaultException">No text, or of a wrong length.</exception>
    public string? Text(string field, int longest)
    {
        if (!_fields.TryGetValue(field, out JsonElement value) || value.ValueKind == JsonValueKind.Null)
        {
            return null;
        }

        string text = value.ValueKind == JsonValueKind.String ? value.GetString()!.Trim() : string.Empty;
        return TypedText.Allows(text, longest)
            ? text
            : throw Fault(field, Shown(value), $"1 to {longest} characters of text, none of them hidden");
    }

    /// <summary>An object of values by name; empty when it is not given.</summary>
    /// <exception cref="FieldFaultException">Something else, or a name given twice.</exception>
    public IReadOnlyDictionary<string, JsonElement> Map(string field)
    {
        if (!_fields.TryGetValue(field, out JsonElement value))
        {
            return new Dictionary<string, JsonElement>();
        }

        if (value.ValueKind != JsonValueKind.Object)
        {
            throw Fault(field, Shown(value), "a JSON object of values by name");
        }

        Dictionary<string, JsonElement> map = new(StringComparer.Ordinal);
        foreach (JsonProperty member in value.EnumerateObject())
        {
            if (!map.TryAdd(member.Name, member.Value))
            {
                throw Fault($"{field}.{member.Name}", "given twice", "once");
            }
        }

        return map;
    }

    /// <summary>A list of texts; empty when it is not given.</summary>
    /// <exception cref="FieldFaultException">Something else.</exception>
    public IReadOnlyList<string> List(string field)
    {
        if (!_fields.TryGetValue(field, out JsonElement value))
        {
            return [];
        }

        return value.ValueKind == JsonValueKind.Array && value.EnumerateArray().All(item => item.ValueKind == JsonValueKind.String)
            ? [.. value.EnumerateArray().Select(item => item.GetString()!)]
            : throw Fault(field, Shown(value), "a list of texts");
    }

    /// <summary>A text as it was given, spaces and all; null when it is missing or not allowed. For what must not be told back.</summary>
    public string? Secret(string field, int shortest, int longest) =>
        _fields.TryGetValue(field, out JsonElement value) && value.ValueKind == JsonValueKind.String
        && value.GetString() is { } text && text.Length >= shortest && text.Length <= longest && !text.Any(char.IsControl)
            ? text
            : null;

    /// <summary>A list of words.</summary>
    /// <exception cref="FieldFaultException">No list, of a wrong length, or of something else.</exception>
    public string[] Words(string field, int fewest, int most) =>
        _fields.TryGetValue(field, out JsonElement value) && value.ValueKind == JsonValueKind.Array
        && value.GetArrayLength() >= fewest && value.GetArrayLength() <= most
        && value.EnumerateArray().All(one => one.ValueKind == JsonValueKind.String)
            ? [.. value.EnumerateArray().Select(one => one.GetString()!)]
            : throw Fault(field, value.ValueKind == JsonValueKind.Undefined ? "nothing" : Shown(value), $"a list of {fewest} to {most} words");

    /// <summary>The exception for one wrong field.</summary>
    public static FieldFaultException Fault(string field, string given, string allowed) => new(new FieldFault(field, given, allowed));

    /// <summary>Reads every text once: half a surrogate pair passes the parser and is found only here.</summary>
    /// <exception cref="InvalidOperationException">A text has half a character.</exception>
    private static void Read(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.String)
        {
            _ = value.GetString();
        }
        else if (value.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement one in value.EnumerateArray())
            {
                Read(one);
            }
        }
        else if (value.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty member in value.EnumerateObject())
            {
                _ = member.Name;
                Read(member.Value);
            }
        }
    }

    private static string Shown(JsonElement value)
    {
        string raw = value.GetRawText();
        return raw.Length <= 60 ? raw : raw[..60] + "…";
    }
}
