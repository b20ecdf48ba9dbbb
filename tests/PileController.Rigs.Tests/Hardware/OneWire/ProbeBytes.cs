using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

/// <summary>Writes what a probe and its kernel file would.</summary>
internal static class ProbeBytes
{
    public const byte TwelveBit = 0x7F;

    /// <summary>Nine bytes with a fitting checksum.</summary>
    public static byte[] Of(int word, byte configuration = TwelveBit)
    {
        byte[] bytes = [(byte)(word & 0xFF), (byte)((word >> 8) & 0xFF), 0x4B, 0x46, configuration, 0xFF, 0x0C, 0x10, 0];
        bytes[8] = Crc8.Of(bytes.AsSpan(0, 8));
        return bytes;
    }

    /// <summary>The two lines of the kernel's file.</summary>
    public static string Text(byte[] bytes, bool kernelAgrees = true)
    {
        string hex = string.Join(' ', bytes.Select(value => value.ToString("x2")));
        short word = unchecked((short)(bytes[0] | (bytes[1] << 8)));
        return $"{hex} : crc={bytes[8]:x2} {(kernelAgrees ? "YES" : "NO")}\n{hex} t={word * 1000 / 16}\n";
    }

    /// <summary>The two lines for a temperature.</summary>
    public static string Text(double celsius) => Text(Of((int)(celsius * 16)));
}
