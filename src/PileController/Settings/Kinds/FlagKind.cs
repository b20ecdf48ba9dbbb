using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>Yes or no.</summary>
internal sealed class FlagKind : ValueKind<bool>
{
    /// <inheritdoc/>
    public override string Allowed => "true or false, without quotes";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out bool value, [NotNullWhen(false)] out string? allowed)
    {
        value = entry.Kind == JsonValueKind.True;
        bool good = entry.Kind is JsonValueKind.True or JsonValueKind.False;
        allowed = good ? null : Allowed;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, bool value) => writer.WriteBooleanValue(value);
}
