using PileController.Control.Readings;
using PileController.Panel.Commands;

namespace PileController.Panel.Queries;

/// <summary>The series that can be asked for: every channel, and what was decided.</summary>
internal static class SeriesNames
{
    private static readonly Dictionary<string, string> Units = new(
        ChannelTable.All.Select(row => KeyValuePair.Create(row.Name, row.Unit)).Concat(
        [
            new("want", "W"), new("means", "W"), new("grant", "W"), new("waterDraw", "W"), new("waterError", "W"),
            new("airDraw", "W"), new("activeZone", "°C"), new("setPoint", "°C"), new("pumpDuty", ""),
            new("valveOpening", ""), new("blowerDuty", ""), new("generation", "W"), new("mode", ""),
        ]),
        StringComparer.OrdinalIgnoreCase);

    /// <summary>Splits and checks what was asked for.</summary>
    /// <param name="given">One value a repeated parameter; each may be a list with commas.</param>
    /// <returns>Name and unit of each, in the order asked, without repeats.</returns>
    /// <exception cref="FieldFaultException">None, too many, or one that nobody knows.</exception>
    public static IReadOnlyList<(string Name, string Unit)> Parse(IEnumerable<string?> given)
    {
        string[] names = [.. given
            .SelectMany(text => (text ?? string.Empty).Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            .Distinct(StringComparer.OrdinalIgnoreCase)];
        string known = string.Join(", ", Units.Keys);
        return names.Length switch
        {
            0 => throw BodyFields.Fault("channel", "nothing", $"one or more of {known}"),
            > 16 => throw BodyFields.Fault("channel", $"{names.Length} names", "at most 16"),
            _ => [.. names.Select(name => Units.TryGetValue(name, out string? unit)
                ? (Units.Keys.First(key => key.Equals(name, StringComparison.OrdinalIgnoreCase)), unit)
                : throw BodyFields.Fault("channel", name, $"one or more of {known}"))],
        };
    }
}
