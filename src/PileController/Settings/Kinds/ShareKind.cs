using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;
using PileController.Units;

namespace PileController.Settings.Kinds;

/// <summary>A share of a whole: a bare number, 0.3, or a percentage, "30 %".</summary>
/// <param name="least">Least allowed.</param>
/// <param name="most">Most allowed.</param>
internal sealed class ShareKind(double least, double most) : ValueKind<double>
{
    private static readonly Unit One = new("", Dimension.Share, 1, 0, []);

    /// <inheritdoc/>
    public override string Allowed => $"{least:R} to {most:R}, or \"{100 * least:G6} %\" to \"{100 * most:G6} %\"";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out double value, [NotNullWhen(false)] out string? allowed)
    {
        value = double.NaN;
        string? problem = null;
        if (entry.Kind == JsonValueKind.Number)
        {
            value = double.Parse(entry.Text, CultureInfo.InvariantCulture);
        }
        else if (entry.Kind == JsonValueKind.String
            && Quantity.TryParse(entry.Text, Dimension.Share, out Quantity quantity, out problem))
        {
            value = quantity.In(One);
        }

        bool good = value >= least && value <= most;
        allowed = good ? null : problem is null ? Allowed : $"{problem} ({Allowed})";
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double value) => writer.WriteNumberValue(value);
}
