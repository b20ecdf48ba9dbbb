using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>An address on a bus, written as its papers give it: "0x40".</summary>
/// <param name="least">Least allowed.</param>
/// <param name="most">Most allowed.</param>
internal sealed class HexKind(int least, int most) : ValueKind<int>
{
    /// <inheritdoc/>
    public override string Allowed => $"an address in hexadecimal and in quotes, \"0x{least:x2}\" to \"0x{most:x2}\"";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out int value, [NotNullWhen(false)] out string? allowed)
    {
        value = least;
        bool good = entry.Kind == JsonValueKind.String
            && entry.Text.StartsWith("0x", StringComparison.OrdinalIgnoreCase)
            && int.TryParse(entry.Text.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out value)
            && value >= least && value <= most;
        allowed = good ? null : Allowed;
        return good;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, int value) => writer.WriteStringValue($"0x{value:x2}");
}
