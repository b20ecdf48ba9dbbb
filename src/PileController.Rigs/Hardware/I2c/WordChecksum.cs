namespace PileController.Rigs.Hardware.I2c;

/// <summary>Checksum over a word: polynomial x⁸+x⁵+x⁴+1, bits as they come (0x31), start 0xFF (SHT3x-DIS data sheet, May 2018, table 20).</summary>
internal static class WordChecksum
{
    private const int Polynomial = 0x31;

    /// <summary>The checksum of some bytes.</summary>
    public static byte Of(ReadOnlySpan<byte> bytes)
    {
        int crc = 0xFF;
        foreach (byte value in bytes)
        {
            crc ^= value;
            for (int bit = 0; bit < 8; bit++)
            {
                crc = (crc & 0x80) != 0 ? ((crc << 1) ^ Polynomial) & 0xFF : crc << 1;
            }
        }

        return (byte)crc;
    }
}
