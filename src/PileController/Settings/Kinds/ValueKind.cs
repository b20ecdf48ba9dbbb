using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>How one kind of value is written in a settings file, and what of it is allowed.</summary>
/// <typeparam name="T">What it becomes.</typeparam>
internal abstract class ValueKind<T>
{
    /// <summary>What is allowed, in words, for documents and faults.</summary>
    public abstract string Allowed { get; }

    /// <summary>Reads a value.</summary>
    /// <param name="entry">What stands in the file.</param>
    /// <param name="value">The value, meaningful when the answer is true.</param>
    /// <param name="allowed">What is allowed instead, when the answer is false.</param>
    public abstract bool TryRead(JsonEntry entry, out T value, [NotNullWhen(false)] out string? allowed);

    /// <summary>Writes a value so that reading it gives the same value.</summary>
    public abstract void Write(Utf8JsonWriter writer, T value);
}
