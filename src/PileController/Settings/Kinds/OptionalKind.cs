using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A number of another kind, or null where there may be none.</summary>
/// <param name="kind">What it is when it is there.</param>
internal sealed class OptionalKind(ValueKind<double> kind) : ValueKind<double?>
{
    /// <inheritdoc/>
    public override string Allowed => $"{kind.Allowed}, or null for none";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out double? value, [NotNullWhen(false)] out string? allowed)
    {
        value = null;
        allowed = null;
        if (entry.Kind == JsonValueKind.Null)
        {
            return true;
        }

        bool good = kind.TryRead(entry, out double number, out allowed);
        value = good ? number : null;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double? value)
    {
        if (value is double number)
        {
            kind.Write(writer, number);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}
