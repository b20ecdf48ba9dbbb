namespace PileController.Rigs.Hardware.OneWire;

/// <summary>The name the kernel gives a thermometer: family 28, a dash, twelve hexadecimal digits.</summary>
internal static class OneWireAddress
{
    private const string Family = "28-";
    private const int Digits = 12;

    /// <summary>True for a name that can be one of a DS18B20 (and so can be no path out of the device folder).</summary>
    public static bool IsValid(string address) =>
        address.Length == Family.Length + Digits
        && address.StartsWith(Family, StringComparison.Ordinal)
        && address.Skip(Family.Length).All(char.IsAsciiHexDigitLower);
}
