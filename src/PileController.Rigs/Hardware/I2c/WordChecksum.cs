namespace PileController.Rigs.Hardware.I2c;

/// <summary>Checksum over a word: polynomial x⁸+x⁵+x⁴+1, bits as they come (0x31), start 0xFF (SHT3x-DIS data sheet, May 2018, table 20).</summary>
internal static class WordChecksum
{
    private const int Polynomial = 0x31;

    /// <summary>A word and its checksum.</summary>
    public const int Length = 3;

    /// <summary>Whether nobody pulls the line low: there is no device at the other end.</summary>
    public static bool IsSilence(ReadOnlySpan<byte> answer) => !answer.ContainsAnyExcept((byte)0xFF);

    /// <summary>Whether all words of an answer fit their checksums: a disturbed transfer is not trusted by parts.</summary>
    /// <param name="answer">Words, each with its checksum behind it.</param>
    public static bool AllFit(ReadOnlySpan<byte> answer)
    {
        for (int at = 0; at < answer.Length; at += Length)
        {
            if (Of(answer.Slice(at, Length - 1)) != answer[at + Length - 1])
            {
                return false;
            }
        }

        return true;
    }

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
