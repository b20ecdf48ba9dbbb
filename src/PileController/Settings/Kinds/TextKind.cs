using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A text, or null where there may be none.</summary>
/// <param name="allowedWords">What is allowed, in words.</param>
/// <param name="isGood">Whether a text is allowed.</param>
/// <param name="optional">Whether null is allowed.</param>
internal sealed class TextKind(string allowedWords, Predicate<string> isGood, bool optional = false) : ValueKind<string?>
{
    /// <inheritdoc/>
    public override string Allowed => optional ? $"{allowedWords}, or null for none" : allowedWords;

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out string? value, [NotNullWhen(false)] out string? allowed)
    {
        value = entry.Kind == JsonValueKind.String ? entry.Text : null;
        bool good = value is null ? optional && entry.Kind == JsonValueKind.Null : isGood(value);
        allowed = good ? null : Allowed;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, string? value) => writer.WriteStringValue(value);
}
