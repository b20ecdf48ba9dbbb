using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>A local time of day, "07:30"; stored as hours, 0 to 24.</summary>
internal sealed class ClockKind : ValueKind<double>
{
    /// <inheritdoc/>
    public override string Allowed => "a time of day, \"00:00\" to \"24:00\"";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out double value, [NotNullWhen(false)] out string? allowed)
    {
        value = double.NaN;
        string[] parts = entry.Kind == JsonValueKind.String ? entry.Text.Split(':') : [];
        if (parts.Length is 2 or 3 && parts.All(p => p.Length == 2 && p.All(char.IsAsciiDigit)))
        {
            int[] numbers = [.. parts.Select(p => int.Parse(p, CultureInfo.InvariantCulture)), 0];
            value = numbers[1] < 60 && numbers[2] < 60
                ? ((numbers[0] * 3600) + (numbers[1] * 60) + numbers[2]) / 3600.0
                : double.NaN;
        }

        bool good = value is >= 0 and <= 24;
        allowed = good ? null : Allowed;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, double value)
    {
        int seconds = (int)Math.Round(value * 3600);
        string minutes = $"{seconds / 3600:00}:{seconds / 60 % 60:00}";
        writer.WriteStringValue(seconds % 60 == 0 ? minutes : $"{minutes}:{seconds % 60:00}");
    }
}
