using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Parts;
using PileController.Physics.Hydraulics;
using PileController.Settings.Json;
using PileController.Units;

namespace PileController.Settings.Kinds;

/// <summary>A number of fittings of one name: "elbow:6", or "elbow" for one.</summary>
internal sealed class FittingKind : ValueKind<FittingCount>
{
    private const int Most = 1000;

    private static readonly string Names = string.Join(", ", Fitting.All.Select(fitting => fitting.Name));

    /// <inheritdoc/>
    public override string Allowed => $"\"name:count\" with a count of 1 to {Most} and a name of {Names}";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out FittingCount value, [NotNullWhen(false)] out string? allowed)
    {
        string[] parts = entry.Kind == JsonValueKind.String ? entry.Text.Split(':', 2) : [""];
        Fitting? fitting = Fitting.Find(parts[0]);
        int count = 1;
        bool counted = parts.Length == 1
            || (int.TryParse(parts[1], NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out count)
                && count is >= 1 and <= Most);
        string? near = fitting is null ? Nearest.Of(parts[0], Fitting.All.Select(f => f.Name)) : null;
        allowed = fitting is not null && counted ? null : near is null ? Allowed : $"{Allowed}; the nearest is \"{near}\"";
        value = new FittingCount(fitting ?? Fitting.All[0], count);
        return allowed is null;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, FittingCount value) => writer.WriteStringValue($"{value.Fitting.Name}:{value.Count}");
}
