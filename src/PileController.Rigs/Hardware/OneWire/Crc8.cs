namespace PileController.Rigs.Hardware.OneWire;

/// <summary>The 1-Wire checksum: polynomial x⁸+x⁵+x⁴+1, bits reflected (0x8C), start 0 (SEN-011...019).</summary>
internal static class Crc8
{
    private const int ReflectedPolynomial = 0x8C;

    /// <summary>The checksum of some bytes; 0 for bytes that end in their own checksum.</summary>
    public static byte Of(ReadOnlySpan<byte> bytes)
    {
        int crc = 0;
        foreach (byte value in bytes)
        {
            crc ^= value;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) != 0 ? (crc >> 1) ^ ReflectedPolynomial : crc >> 1;
            }
        }

        return (byte)crc;
    }
}
