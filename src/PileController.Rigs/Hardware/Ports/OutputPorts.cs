using System.Device.Gpio;
using System.Device.I2c;

namespace PileController.Rigs.Hardware.Ports;

/// <summary>
/// Opens outputs where the settings say they are. A chip on the I2C bus is opened once, by the first that needs it, and
/// everything else only when it is asked for: what is missing keeps nothing else from being made safe.
/// </summary>
/// <param name="hardware">Where everything is.</param>
/// <param name="lines">Opens the chip of the lines.</param>
/// <param name="files">The kernel's PWM files.</param>
/// <param name="i2c">Opens a device by bus and address.</param>
internal sealed class OutputPorts(
    HardwareSettings hardware, Func<GpioController> lines, PwmFiles files, Func<int, int, I2cDevice> i2c) : IDisposable
{
    // The data sheet asks for 500 µs (from memory).
    private static readonly TimeSpan Rousing = TimeSpan.FromMilliseconds(1);

    private readonly List<IOutput> _opened = [];
    private Pca9685? _chip;

    /// <summary>The real ones.</summary>
    /// <param name="hardware">Where everything is.</param>
    /// <param name="lines">Opens the chip of the lines.</param>
    public static OutputPorts Of(HardwareSettings hardware, Func<GpioController> lines) =>
        new(hardware, lines, PwmFiles.Kernel, (bus, address) => I2cDevice.Create(new I2cConnectionSettings(bus, address)));

    /// <summary>The chip of the lines.</summary>
    public GpioController Lines => lines();

    /// <summary>
    /// Looks for every chip, line and channel the settings name, and moves nothing.
    /// </summary>
    /// <exception cref="RigFaultException">One is not there.</exception>
    public void RequireAll()
    {
        int count = Lines.PinCount;
        foreach (HardwareLine row in HardwareLines.All)
        {
            if (row.Line(hardware) is { } line && line >= count)
            {
                throw new RigFaultException(
                    $"rig.hardware.{row.Setting} is {line}; the chip \"{hardware.GpioChipLabel}\" has the lines 0 to {count - 1}.");
            }
        }

        foreach (LoadSettings load in (LoadSettings[])[hardware.Pump, hardware.Blower])
        {
            if (load.Drive == LoadDrive.Pwm)
            {
                PwmChip.Find(hardware.PwmChip!, files).Require(load.Channel!.Value);
            }
        }

        if (hardware.Pump.Drive == LoadDrive.I2cPwm || hardware.Blower.Drive == LoadDrive.I2cPwm)
        {
            using I2cDevice device = Device();
            Pca9685.Require(device);
        }
    }

    /// <summary>A line, off.</summary>
    /// <exception cref="RigFaultException">It cannot be opened.</exception>
    public IOutput Line(string name, int line) => Kept(new LineOutput(Lines, name, line, hardware.ActiveLow));

    /// <summary>The signal of a load, at nothing.</summary>
    /// <exception cref="RigFaultException">It cannot be opened.</exception>
    public IOutput Signal(LoadSettings load) => Kept(load.Drive == LoadDrive.Pwm
        ? new PwmOutput(PwmChip.Find(hardware.PwmChip!, files), load.Channel!.Value, load.FrequencyHz, files)
        : new Pca9685Output(_chip ??= new Pca9685(Device(), hardware.I2cPwm.FrequencyHz, () => Thread.Sleep(Rousing)), load.Channel!.Value));

    /// <summary>Lets go of what was opened. The lines' chip is another's.</summary>
    public void Dispose()
    {
        foreach (IOutput output in _opened)
        {
            try
            {
                output.Dispose();
            }
            catch (Exception)
            {
                // Told already by whoever switched the load off; the others are let go all the same.
            }
        }

        _opened.Clear();
        _chip?.Dispose();
        _chip = null;
    }

    private IOutput Kept(IOutput output)
    {
        _opened.Add(output);
        return output;
    }

    private I2cDevice Device()
    {
        try
        {
            return i2c(hardware.I2cPwm.Bus, hardware.I2cPwm.Address);
        }
        catch (Exception error)
        {
            throw new RigFaultException($"I2C bus {hardware.I2cPwm.Bus} cannot be opened: {error.Message}", error);
        }
    }
}
