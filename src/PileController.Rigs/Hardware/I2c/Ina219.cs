using System.Device.I2c;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>
/// The INA219's registers (data sheet SBOS448). Current is reckoned here from the shunt's voltage: the device's own
/// reckoning hangs on a register that is empty again after its supply has dipped, and then says nought.
/// </summary>
/// <param name="device">The device.</param>
/// <param name="pause">Waits on the bus's thread.</param>
internal sealed class Ina219(I2cDevice device, Action<TimeSpan> pause)
{
    /// <summary>Largest voltage over the shunt that can be told, V.</summary>
    public const double MostShuntVolts = 0.32;

    private const byte ConfigurationRegister = 0;
    private const byte ShuntRegister = 1;
    private const byte BusRegister = 2;

    // 32 V, shunt ±320 mV, both as means of 128 samples (68 ms, from memory), over and over.
    private const ushort Configuration = 0x3FFF;
    private const int BusShift = 3;
    private const double BusVoltsPerStep = 0.004;
    private const double ShuntVoltsPerStep = 0.00001;

    // One mean of each, and a tenth more.
    private static readonly TimeSpan BothMeans = TimeSpan.FromMilliseconds(150);

    /// <summary>Measures both.</summary>
    /// <returns>Voltage of the load against ground and over the shunt, V.</returns>
    /// <exception cref="IOException">The device does not answer.</exception>
    public (double BusVolts, double ShuntVolts) Measure()
    {
        if (Registers.Read(device, ConfigurationRegister) != Configuration)
        {
            // We start, or its supply dipped and it has measured nothing yet.
            Registers.Write(device, ConfigurationRegister, Configuration);
            pause(BothMeans);
        }

        short shunt = unchecked((short)Registers.Read(device, ShuntRegister));
        int bus = Registers.Read(device, BusRegister) >> BusShift;
        return (bus * BusVoltsPerStep, shunt * ShuntVoltsPerStep);
    }
}
