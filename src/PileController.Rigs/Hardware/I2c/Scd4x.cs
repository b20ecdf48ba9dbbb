using System.Buffers.Binary;
using System.Device.I2c;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>
/// The SCD4x's commands for measuring carbon dioxide every five seconds, and what was measured last. Words come with the
/// SHT4x's checksum (all from memory but the range; the range by the data sheet of April 2021). What it says of temperature
/// and humidity is left out: it warms itself.
/// </summary>
/// <param name="time">Clock.</param>
/// <param name="pause">Waits on the bus's thread.</param>
internal sealed class Scd4x(TimeProvider time, Action<TimeSpan> pause)
{
    private const ushort Start = 0x21B1;
    private const ushort Stop = 0x3F86;
    private const ushort IsReady = 0xE4B8;
    private const ushort Read = 0xEC05;

    // Any of these eleven bits of the answer says that there is a new measurement.
    private const int ReadyBits = 0x07FF;
    private const int MeasurementWords = 3;

    // It tells 0 to 40,000 ppm (data sheet, April 2021), and 0 where it has not measured carbon dioxide (from memory).
    private const double Least = 1;
    private const double Most = 40_000;

    private static readonly TimeSpan CommandTime = TimeSpan.FromMilliseconds(1);
    private static readonly TimeSpan StopTime = TimeSpan.FromMilliseconds(500);

    // Three measurements missed: it rests, as after its supply was gone, or what it told is too old.
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(15);

    private Measured? _last;
    private long? _since;

    /// <summary>
    /// The newest measurement, ppm; the one before where there is no new one yet. While there is none it begins to measure,
    /// and says that there is no answer.
    /// </summary>
    /// <param name="device">The device.</param>
    /// <exception cref="IOException">The device does not answer.</exception>
    public Measured Ppm(I2cDevice device)
    {
        if (_since is not { } since)
        {
            Begin(device);
            return Measured.Failed(ReadingQuality.NoAnswer);
        }

        if (Words(device, IsReady, 1) is not { } ready)
        {
            return Measured.Failed(ReadingQuality.BadChecksum);
        }

        if ((ready[0] & ReadyBits) != 0)
        {
            return Newest(device);
        }

        if (time.GetElapsedTime(since) > Silence)
        {
            Begin(device);
        }

        return _last ?? Measured.Failed(ReadingQuality.NoAnswer);
    }

    private Measured Newest(I2cDevice device)
    {
        // What was read is gone from the device.
        if (Words(device, Read, MeasurementWords) is not { } words)
        {
            return Measured.Failed(ReadingQuality.BadChecksum);
        }

        _since = time.GetTimestamp();
        _last = Measured.Within(Least, Most, words[0]);
        return _last.Value;
    }

    // One that measures already takes no other command than to stop; one that rests may not take that one.
    private void Begin(I2cDevice device)
    {
        _last = null;
        try
        {
            Send(device, Stop);
        }
        catch (IOException)
        {
            // The start that follows tells whether it is there.
        }

        pause(StopTime);
        Send(device, Start);
        _since = time.GetTimestamp();
    }

    // Null where a checksum is wrong.
    private ushort[]? Words(I2cDevice device, ushort command, int count)
    {
        Send(device, command);
        pause(CommandTime);
        Span<byte> answer = stackalloc byte[WordChecksum.Length * count];
        device.Read(answer);
        if (WordChecksum.IsSilence(answer))
        {
            throw new IOException("Nobody pulls the line low: there is no device at the other end.");
        }

        if (!WordChecksum.AllFit(answer))
        {
            return null;
        }

        ushort[] words = new ushort[count];
        for (int i = 0; i < count; i++)
        {
            words[i] = BinaryPrimitives.ReadUInt16BigEndian(answer[(WordChecksum.Length * i)..]);
        }

        return words;
    }

    private static void Send(I2cDevice device, ushort command) => device.Write([(byte)(command >> 8), (byte)(command & 0xFF)]);
}
