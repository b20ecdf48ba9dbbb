using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A value of another kind, or null where there may be none.</summary>
/// <typeparam name="T">What it is when it is there.</typeparam>
/// <param name="kind">What it is when it is there.</param>
internal sealed class OptionalKind<T>(ValueKind<T> kind) : ValueKind<T?>
    where T : struct
{
    /// <inheritdoc/>
    public override string Allowed => $"{kind.Allowed}, or null for none";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out T? value, [NotNullWhen(false)] out string? allowed)
    {
        value = null;
        allowed = null;
        if (entry.Kind == JsonValueKind.Null)
        {
            return true;
        }

        bool good = kind.TryRead(entry, out T there, out allowed);
        value = good ? there : null;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T? value)
    {
        if (value is { } there)
        {
            kind.Write(writer, there);
        }
        else
        {
            writer.WriteNullValue();
        }
    }
}
