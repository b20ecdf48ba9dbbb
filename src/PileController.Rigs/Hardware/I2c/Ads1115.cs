using System.Device.I2c;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>
/// The ADS1115's registers: one conversion at a time, an input against ground, ±4.096 V. Register layout from memory of
/// the data sheet (SBAS444); its tests' simulator is from the same memory, so a real device has the last word.
/// </summary>
/// <param name="device">The device.</param>
/// <param name="pause">Waits on the bus's thread.</param>
internal sealed class Ads1115(I2cDevice device, Action<TimeSpan> pause)
{
    /// <summary>Volts of one step at ±4.096 V.</summary>
    public const double VoltsPerStep = 4.096 / 32768;

    private const byte ConversionRegister = 0;
    private const byte ConfigurationRegister = 1;

    // Start; input against ground; ±4.096 V; one conversion; 16 a second, which averages over more than three periods of
    // the mains' hum; no comparator.
    private const ushort StartOrIdle = 0x8000;
    private const ushort InputAgainstGround = 0x4000;
    private const int InputShift = 12;
    private const ushort Rest = 0x0200 | 0x0100 | 0x0020 | 0x0003;

    // A sixteenth of a second, and a tenth more: the device's clock is good to 10 %.
    private static readonly TimeSpan Conversion = TimeSpan.FromMilliseconds(69);
    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(5);

    private const int MostSteps = 10;

    /// <summary>Measures one input against ground.</summary>
    /// <param name="input">0 to 3.</param>
    /// <returns>Volts; null where the input is at or beyond the end of the range.</returns>
    /// <exception cref="IOException">The device does not answer, or does not come to an end.</exception>
    public double? Volts(int input)
    {
        Registers.Write(device, ConfigurationRegister, (ushort)(StartOrIdle | InputAgainstGround | (input << InputShift) | Rest));
        pause(Conversion);
        for (int step = 0; (Registers.Read(device, ConfigurationRegister) & StartOrIdle) == 0; step++)
        {
            if (step == MostSteps)
            {
                throw new IOException("a conversion does not come to an end.");
            }

            pause(Step);
        }

        short steps = unchecked((short)Registers.Read(device, ConversionRegister));
        return steps is short.MaxValue or short.MinValue ? null : steps * VoltsPerStep;
    }
}
