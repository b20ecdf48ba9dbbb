using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Settings.Json;

namespace PileController.Settings.Kinds;

/// <summary>
/// The address of a device on an I2C bus, as the bus's tools print it: "0x48". Those below 0x08 and above 0x77 the bus
/// keeps for itself (I2C-bus specification, from memory).
/// </summary>
internal sealed class AddressKind : ValueKind<int?>
{
    private const int Least = 0x08;
    private const int Most = 0x77;
    private const string Prefix = "0x";

    /// <inheritdoc/>
    public override string Allowed => $"an address in hexadecimal and in quotes, \"0x{Least:x2}\" to \"0x{Most:x2}\", or null for none";

    /// <inheritdoc/>
    public override bool TryRead(JsonEntry entry, out int? value, [NotNullWhen(false)] out string? allowed)
    {
        value = null;
        bool isNone = entry.Kind == JsonValueKind.Null;
        if (entry.Kind == JsonValueKind.String
            && entry.Text.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase)
            && int.TryParse(entry.Text.AsSpan(Prefix.Length), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out int address)
            && address is >= Least and <= Most)
        {
            value = address;
        }

        allowed = isNone || value is not null ? null : Allowed;
        return allowed is null;
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, int? value) => writer.WriteStringValue(value is int address ? $"{Prefix}{address:x2}" : null);
}
