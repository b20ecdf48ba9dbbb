using PileController.Control.Readings;

namespace PileController.Rigs.Hardware.OneWire;

/// <summary>The nine bytes a DS18B20 gives: temperature word, alarms, configuration, reserved, checksum.</summary>
internal static class Scratchpad
{
    /// <summary>How many bytes there are.</summary>
    public const int Length = 9;

    /// <summary>The word a probe shows before its first conversion: 85 °C (SEN-002).</summary>
    public const int PowerOnSixteenths = 0x0550;

    private const int ConfigurationByte = 4;

    /// <summary>Judges the bytes by themselves; whether 85 °C is a power-on value needs more than them.</summary>
    public static ProbeAnswer Judge(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length != Length)
        {
            return ProbeAnswer.Failed(ReadingQuality.BadChecksum);
        }

        // The checksum of zeros is zero (SEN-018), so a shorted bus passes it: look at the bytes first.
        if (!bytes.ContainsAnyExcept((byte)0))
        {
            return ProbeAnswer.Failed(ReadingQuality.Shorted);
        }

        // Nobody pulled the line low: there is no probe at the other end.
        if (!bytes.ContainsAnyExcept((byte)0xFF))
        {
            return ProbeAnswer.Failed(ReadingQuality.NoAnswer);
        }

        return Crc8.Of(bytes) == 0
            ? new ProbeAnswer(ReadingQuality.Good, Sixteenths(bytes))
            : ProbeAnswer.Failed(ReadingQuality.BadChecksum);
    }

    private static int Sixteenths(ReadOnlySpan<byte> bytes)
    {
        // Bits 5 and 6 give the resolution, 9 to 12 bit; the bits below it are undefined (from memory).
        int undefinedBits = 3 - ((bytes[ConfigurationByte] >> 5) & 3);
        short word = unchecked((short)(bytes[0] | (bytes[1] << 8)));
        return word & ~((1 << undefinedBits) - 1);
    }
}
