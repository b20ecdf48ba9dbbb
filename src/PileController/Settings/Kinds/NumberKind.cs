using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A bare number: a count, an angle in degrees or a ratio.</summary>
/// <param name="least">Least allowed.</param>
/// <param name="most">Most allowed.</param>
/// <param name="meaning">What it counts, in words: "degrees north".</param>
internal sealed class NumberKind(double least, double most, string meaning) : ValueKind<double>
{
    /// <inheritdoc/>
    public override string Allowed => $"{least:R} to {most:R} {meaning}, a number without quotes";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out double value, [NotNullWhen(false)] out string? allowed)
    {
        value = entry.Kind == JsonValueKind.Number
            ? double.Parse(entry.Text, CultureInfo.InvariantCulture)
            : double.NaN;
        bool good = value >= least && value <= most;
        allowed = good ? null : Allowed;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double value) => writer.WriteNumberValue(value);
}
