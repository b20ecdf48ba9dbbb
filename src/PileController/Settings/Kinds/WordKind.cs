using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;
using PileController.Units;

namespace PileController.Settings.Kinds;

/// <summary>One word of a fixed list.</summary>
/// <typeparam name="T">What the words stand for; null is allowed where it can be null.</typeparam>
/// <param name="words">The words, each with its meaning.</param>
internal sealed class WordKind<T>(IReadOnlyList<(string Word, T Meaning)> words) : ValueKind<T>
{
    /// <inheritdoc/>
    public override string Allowed =>
        $"one of {string.Join(", ", words.Select(w => $"\"{w.Word}\""))}{(default(T) is null ? ", or null for none" : "")}";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out T value, [NotNullWhen(false)] out string? allowed)
    {
        if (entry.Kind == JsonValueKind.String)
        {
            foreach ((string word, T meaning) in words)
            {
                if (string.Equals(word, entry.Text, StringComparison.OrdinalIgnoreCase))
                {
                    value = meaning;
                    allowed = null;
                    return true;
                }
            }
        }

        if (entry.Kind == JsonValueKind.Null && default(T) is null)
        {
            value = default!;
            allowed = null;
            return true;
        }

        value = words[0].Meaning;
        string? near = Nearest.Of(entry.Text, words.Select(w => w.Word));
        allowed = near is null ? Allowed : $"{Allowed}; the nearest is \"{near}\"";
        return false;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value) => writer.WriteStringValue(
        value is null ? null : words.First(w => EqualityComparer<T>.Default.Equals(w.Meaning, value)).Word);
}
