using System.Buffers.Binary;
using System.Device.I2c;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>Registers of 16 bit, high byte first, as the converter and the power monitor have them.</summary>
internal static class Registers
{
    /// <summary>Reads one, in one transfer.</summary>
    public static ushort Read(I2cDevice device, byte register)
    {
        Span<byte> answer = stackalloc byte[2];
        device.WriteRead([register], answer);
        return BinaryPrimitives.ReadUInt16BigEndian(answer);
    }

    /// <summary>Writes one.</summary>
    public static void Write(I2cDevice device, byte register, ushort value) =>
        device.Write([register, (byte)(value >> 8), (byte)(value & 0xFF)]);
}
