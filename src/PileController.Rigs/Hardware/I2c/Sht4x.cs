using System.Buffers.Binary;
using System.Device.I2c;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>
/// The SHT4x's command for a measurement of high precision. Two words come back, temperature and humidity, each with a
/// checksum (data sheet, from memory; checksum as in the SHT3x-DIS data sheet, May 2018, table 20).
/// </summary>
/// <param name="device">The device.</param>
/// <param name="pause">Waits on the bus's thread.</param>
internal sealed class Sht4x(I2cDevice device, Action<TimeSpan> pause)
{
    private const byte MeasureFinely = 0xFD;
    private const int AnswerLength = 2 * WordChecksum.Length;

    // The part's range, °C (from memory).
    private const double Least = -40;
    private const double Most = 125;

    // It takes at most 8.3 ms, and does not answer before.
    private static readonly TimeSpan Measurement = TimeSpan.FromMilliseconds(10);

    /// <summary>Measures the air.</summary>
    /// <returns>Temperature, °C, and relative humidity, %.</returns>
    /// <exception cref="IOException">The device does not answer.</exception>
    public (Measured Celsius, Measured Percent) Measure()
    {
        device.WriteByte(MeasureFinely);
        pause(Measurement);
        Span<byte> answer = stackalloc byte[AnswerLength];
        device.Read(answer);

        if (WordChecksum.IsSilence(answer))
        {
            return Both(Measured.Failed(ReadingQuality.NoAnswer));
        }

        return WordChecksum.AllFit(answer)
            ? (Measured.Within(Least, Most, -45 + (175.0 * BinaryPrimitives.ReadUInt16BigEndian(answer) / 65535)),
                Measured.Good(Math.Clamp(-6 + (125.0 * BinaryPrimitives.ReadUInt16BigEndian(answer[WordChecksum.Length..]) / 65535), 0, 100)))
            : Both(Measured.Failed(ReadingQuality.BadChecksum));
    }

    private static (Measured, Measured) Both(Measured one) => (one, one);
}
