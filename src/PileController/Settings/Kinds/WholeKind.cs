using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A bare whole number, or null where there may be none.</summary>
/// <param name="least">Least allowed.</param>
/// <param name="most">Most allowed.</param>
/// <param name="optional">Whether null is allowed.</param>
internal sealed class WholeKind(long least, long most, bool optional = false) : ValueKind<long?>
{
    /// <inheritdoc/>
    public override string Allowed => $"a whole number, {least} to {most}{(optional ? ", or null for none" : "")}";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out long? value, [NotNullWhen(false)] out string? allowed)
    {
        value = entry.Kind == JsonValueKind.Number
            && long.TryParse(entry.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long whole)
                ? whole
                : null;
        bool good = value is long number
            ? number >= least && number <= most
            : optional && entry.Kind == JsonValueKind.Null;
        allowed = good ? null : Allowed;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, long? value)
    {
        if (value is long number)
        {
            writer.WriteNumberValue(number);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}
