using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;
using PileController.Units;

namespace PileController.Settings.Kinds;

/// <summary>A physical quantity, always written with its unit; stored as a number in <paramref name="stored"/>.</summary>
/// <param name="stored">Unit of the stored number.</param>
/// <param name="written">Unit in which files are written and ranges are told.</param>
/// <param name="least">Least allowed, in the stored unit.</param>
/// <param name="most">Most allowed, in the stored unit.</param>
internal sealed class QuantityKind(Unit stored, Unit written, double least, double most) : ValueKind<double>
{
    /// <inheritdoc/>
    public override string Allowed => RangeIn(written);

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out double value, [NotNullWhen(false)] out string? allowed)
    {
        value = 0;
        if (entry.Kind is not (JsonValueKind.String or JsonValueKind.Number))
        {
            allowed = $"{DimensionTable.Of(stored.Dimension).Name} in quotes with its unit, {Allowed}";
            return false;
        }

        if (!Quantity.TryParse(entry.Text, stored.Dimension, out Quantity quantity, out allowed))
        {
            allowed = $"{allowed} ({Allowed})";
            return false;
        }

        value = quantity.In(stored);
        if (value < least || value > most)
        {
            // The writer thinks in the unit given: say the range in it too.
            allowed = quantity.Unit == written ? Allowed : $"{Allowed} ({RangeIn(quantity.Unit)})";
            return false;
        }

        return true;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double value) =>
        writer.WriteStringValue(Quantity.Exactly(value, stored, written).ToString());

    private string RangeIn(Unit shown) =>
        $"{Plain(Conversion.Of(least, stored, shown))} {shown.Symbol} to {Plain(Conversion.Of(most, stored, shown))} {shown.Symbol}";

    // Six figures, and no power of ten where a person would write the number out: 31622400, not 3.16224E+07.
    private static string Plain(double value) => Math.Abs(value) >= 1e6
        ? decimal.Parse($"{value:G6}", NumberStyles.Float, CultureInfo.CurrentCulture).ToString("0")
        : $"{value:G6}";
}
