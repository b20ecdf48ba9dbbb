using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A value of another kind, or null where there is none.</summary>
/// <param name="kind">The other kind.</param>
internal sealed class OptionalKind(ValueKind<double> kind) : ValueKind<double?>
{
    /// <inheritdoc/>
    public override string Allowed => kind.Allowed;

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out double? value, [NotNullWhen(false)] out string? allowed)
    {
        value = null;
        allowed = null;
        if (entry.Kind == JsonValueKind.Null)
        {
            return true;
        }

        bool good = kind.TryRead(entry, out double given, out allowed);
        value = good ? given : null;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double? value)
    {
        if (value is double given)
        {
            kind.Write(writer, given);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}
