using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A list of values of one kind: ["elbow:6", "ball-valve:1"].</summary>
/// <typeparam name="T">What one of them becomes.</typeparam>
/// <param name="kind">The kind of one of them.</param>
internal sealed class ManyKind<T>(ValueKind<T> kind) : ValueKind<IReadOnlyList<T>>
{
    /// <inheritdoc/>
    public override string Allowed => $"a list in brackets [ ], each {kind.Allowed}";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out IReadOnlyList<T> value, [NotNullWhen(false)] out string? allowed)
    {
        List<T> values = [];
        value = values;
        allowed = entry.Kind == JsonValueKind.Array ? null : Allowed;
        foreach (JsonEntry item in entry.Items)
        {
            if (!kind.TryRead(item, out T one, out string? wanted))
            {
                allowed ??= $"{wanted} (given {item.Given})";
            }

            values.Add(one);
        }

        return allowed is null;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, IReadOnlyList<T> value)
    {
        writer.WriteStartArray();
        foreach (T one in value)
        {
            kind.Write(writer, one);
        }

        writer.WriteEndArray();
    }
}
