using System.Device.I2c;

namespace PileController.Rigs.Hardware.Ports;

/// <summary>
/// A PCA9685: sixteen channels of 12-bit PWM on the I2C bus, with an oscillator of its own. It goes on with its last duty when
/// the program dies, so its output-enable pin belongs to the watchdog timer. Registers are those of its data sheet (from memory).
/// </summary>
internal sealed class Pca9685 : IDisposable
{
    /// <summary>How many channels it has.</summary>
    public const int Channels = 16;

    /// <summary>Steps of a period.</summary>
    public const int Steps = 4096;

    /// <summary>Lowest frequency its prescaler reaches, Hz.</summary>
    public const double LeastHertz = 24;

    /// <summary>Highest frequency its prescaler reaches, Hz.</summary>
    public const double MostHertz = 1526;

    private const double OscillatorHertz = 25e6;
    private const byte Mode1 = 0x00;
    private const byte Mode2 = 0x01;
    private const byte FirstOnLow = 0x06;
    private const byte AllOffHigh = 0xFD;
    private const byte Prescaler = 0xFE;

    // MODE1: bit 7 restart, 5 auto-increment, 4 sleep. MODE2: bit 2 totem pole; outputs are low while output-enable is off.
    private const byte Restart = 0x80;
    private const byte Increment = 0x20;
    private const byte Asleep = 0x10;
    private const byte TotemPole = 0x04;

    // Bit 4 of a channel's high bytes: on, or off, for all of the period. Off outranks on.
    private const byte Full = 0x10;

    private readonly I2cDevice _device;
    private readonly Action _rouse;
    private readonly byte _prescale;

    /// <summary>Puts all channels off, sets the frequency, and proves both.</summary>
    /// <param name="device">The chip; owned from now on.</param>
    /// <param name="hertz">Frequency of all channels, Hz.</param>
    /// <param name="rouse">Waits the 500 µs the oscillator takes to start (data sheet, from memory).</param>
    /// <exception cref="RigFaultException">It does not answer, or not as this chip does.</exception>
    public Pca9685(I2cDevice device, double hertz, Action rouse)
    {
        _device = device;
        _rouse = rouse;
        _prescale = Prescale(hertz);
        try
        {
            SetUp();
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The {Place} cannot be set up: {error.Message}", error);
        }
    }

    /// <summary>Where it is, for a sentence.</summary>
    public string Place => Named(_device);

    /// <summary>The prescaler's value: round(oscillator / (4096 · f)) − 1 (data sheet, from memory).</summary>
    /// <param name="hertz">Frequency, Hz; 24 to 1526.</param>
    public static byte Prescale(double hertz) =>
        hertz is >= LeastHertz and <= MostHertz
            ? (byte)(Math.Clamp(Math.Round(OscillatorHertz / (Steps * hertz)), 4, 256) - 1)
            : throw new ArgumentException(
                $"Hardware.I2cPwm.FrequencyHz is {hertz}; allowed is {LeastHertz} to {MostHertz}.", nameof(hertz));

    /// <summary>Throws when nothing answers at a device's address; changes nothing.</summary>
    /// <exception cref="RigFaultException">Nothing answers.</exception>
    public static void Require(I2cDevice device)
    {
        try
        {
            device.WriteRead([Mode1], stackalloc byte[1]);
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The {Named(device)} does not answer: {error.Message}", error);
        }
    }

    /// <summary>Puts out a share of each period on one channel, and reads it back.</summary>
    /// <exception cref="Exception">The chip does not answer or obey.</exception>
    public void Write(int channel, double share)
    {
        // A chip whose supply failed for a moment sleeps, all off, and would take a duty without giving one.
        if ((Register(Mode1) & ~Restart) != Increment)
        {
            SetUp();
            throw new InvalidOperationException("it had lost its settings, as after a break of its supply; it was set up anew.");
        }

        byte[] wanted = Words(share);
        _device.Write([First(channel), .. wanted]);
        byte[] read = Bytes(channel);
        if (!wanted.AsSpan().SequenceEqual(read))
        {
            throw new InvalidOperationException(
                $"channel {channel} reads {Convert.ToHexString(read)} after {Convert.ToHexString(wanted)} was written.");
        }
    }

    /// <summary>What a channel's registers say, 0 to 1.</summary>
    /// <exception cref="Exception">The chip does not answer.</exception>
    public double Read(int channel)
    {
        byte[] read = Bytes(channel);
        int off = read[2] | ((read[3] & 0x0F) << 8);
        return (read[3] & Full) != 0 ? 0 : (read[1] & Full) != 0 ? 1 : (double)off / Steps;
    }

    /// <summary>Lets the bus go.</summary>
    public void Dispose() => _device.Dispose();

    private static string Named(I2cDevice device) =>
        $"PWM chip at 0x{device.ConnectionSettings.DeviceAddress:x2} of I2C bus {device.ConnectionSettings.BusId}";

    private static byte First(int channel) => (byte)(FirstOnLow + (4 * channel));

    private static byte[] Words(double share)
    {
        int steps = (int)Math.Round(Math.Clamp(share, 0, 1) * Steps);
        return steps switch
        {
            0 => [0, 0, 0, Full],
            Steps => [0, Full, 0, 0],
            _ => [0, 0, (byte)(steps & 0xFF), (byte)(steps >> 8)],
        };
    }

    private void SetUp()
    {
        // Before anything else, in one transfer: whatever it was doing, it stops.
        _device.Write([AllOffHigh, Full]);

        // The prescaler is taken only in sleep.
        _device.Write([Mode1, Increment | Asleep]);
        _device.Write([Prescaler, _prescale]);
        _device.Write([Mode2, TotemPole]);
        _device.Write([Mode1, Increment]);
        _rouse();
        Prove(Mode1, Increment, "MODE1", Restart);
        Prove(Mode2, TotemPole, "MODE2", 0);
        Prove(Prescaler, _prescale, "PRE_SCALE", 0);
    }

    private void Prove(byte register, int wanted, string name, byte ignored)
    {
        int read = Register(register) & ~ignored;
        if (read != wanted)
        {
            throw new InvalidOperationException($"{name} reads 0x{read:x2} after 0x{wanted:x2} was written.");
        }
    }

    private byte Register(byte register)
    {
        Span<byte> read = stackalloc byte[1];
        _device.WriteRead([register], read);
        return read[0];
    }

    private byte[] Bytes(int channel)
    {
        byte[] read = new byte[4];
        _device.WriteRead([First(channel)], read);
        return read;
    }
}
