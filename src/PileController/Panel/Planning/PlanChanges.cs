using System.Globalization;
using Microsoft.Extensions.Primitives;
using PileController.Panel.Commands;

namespace PileController.Panel.Planning;

/// <summary>What a grower tries otherwise than it is built.</summary>
internal sealed class PlanChanges
{
    private readonly IReadOnlyDictionary<string, double> _values;

    private PlanChanges(IReadOnlyDictionary<string, double> values) => _values = values;

    /// <summary>The same text for the same changes, whatever their order in the query.</summary>
    public string Key => string.Join('&', _values.OrderBy(one => one.Key, StringComparer.Ordinal)
        .Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Key}={one.Value:R}")));

    /// <summary>What is tried for a field, or null when it stays.</summary>
    public double? Of(TryField field) => _values.TryGetValue(field.Name, out double value) ? value : null;

    /// <summary>Reads the changes from a query.</summary>
    /// <param name="query">The query.</param>
    /// <param name="besides">Names that mean something else here.</param>
    /// <exception cref="FieldFaultException">An unknown field, one given twice, or no number.</exception>
    public static PlanChanges Parse(IQueryCollection query, params string[] besides)
    {
        string[] known = [.. TryField.All.Select(field => field.Name)];
        Dictionary<string, double> values = [];
        foreach ((string name, StringValues given) in query)
        {
            if (besides.Contains(name))
            {
                continue;
            }

            if (!known.Contains(name))
            {
                throw BodyFields.Fault(name, "this field", string.Join(", ", known));
            }

            values[name] = Number(name, given);
        }

        if (values.ContainsKey("turns") && values.ContainsKey("lengthM"))
        {
            throw BodyFields.Fault("lengthM", $"{query["lengthM"]} beside turns", "turns or lengthM, one of the two");
        }

        return new PlanChanges(values);
    }

    private static double Number(string name, StringValues given)
    {
        string text = given.ToString();
        string shown = text.Length <= 60 ? text : text[..60] + "…";
        return given.Count == 1
            && double.TryParse(text, NumberStyles.Float & ~NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number)
                ? number
                : throw BodyFields.Fault(name, shown.Length == 0 ? "nothing" : shown, "one number, such as 1.2");
    }
}
