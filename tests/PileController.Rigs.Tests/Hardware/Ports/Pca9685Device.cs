using System.Device.I2c;

namespace PileController.Rigs.Tests.Hardware.Ports;

/// <summary>A PCA9685 by its registers: power-on values, auto-increment, full bits, sleep, a prescaler that is taken in sleep only.</summary>
internal sealed class Pca9685Device : I2cDevice
{
    private const int Mode1 = 0x00;
    private const int AllOnLow = 0xFA;
    private const int Prescaler = 0xFE;

    private readonly byte[] _registers = new byte[256];

    public Pca9685Device() => PowerOn();

    public override I2cConnectionSettings ConnectionSettings { get; } = new(1, 0x40);

    /// <summary>The frequency its oscillator of 25 MHz gives, Hz.</summary>
    public double Hertz => 25e6 / (4096 * (_registers[Prescaler] + 1.0));

    public bool IsGone { get; set; }

    public bool Disobeys { get; set; }

    public bool IsDisposed { get; private set; }

    /// <summary>Every share of channel 5, in order, without repeats.</summary>
    public List<double> Seen { get; } = [];

    public byte this[int register] => _registers[register];

    /// <summary>As after a break of its supply.</summary>
    public void PowerOn()
    {
        Array.Clear(_registers);
        _registers[Mode1] = 0x11;
        _registers[0x01] = 0x04;
        _registers[Prescaler] = 0x1E;
        for (int channel = 0; channel < 16; channel++)
        {
            _registers[9 + (4 * channel)] = 0x10;
        }
    }

    /// <summary>What a channel puts out now, 0 to 1. Asleep, only full bits count.</summary>
    public double Share(int channel)
    {
        Span<byte> words = _registers.AsSpan(6 + (4 * channel), 4);
        if ((words[3] & 0x10) != 0)
        {
            return 0;
        }

        if ((words[1] & 0x10) != 0)
        {
            return 1;
        }

        int on = words[0] | ((words[1] & 0x0F) << 8);
        int off = words[2] | ((words[3] & 0x0F) << 8);
        return (_registers[Mode1] & 0x10) != 0 ? 0 : (((off - on) + 4096) % 4096) / 4096.0;
    }

    public override void Read(Span<byte> buffer) => throw new NotSupportedException();

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        Answer();
        int register = buffer[0];
        foreach (byte value in buffer[1..])
        {
            Put(register, value);
            register += (_registers[Mode1] & 0x20) != 0 ? 1 : 0;
        }

        // Outputs change when the transfer ends.
        if (Seen.Count == 0 || Seen[^1] != Share(5))
        {
            Seen.Add(Share(5));
        }
    }

    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Answer();
        int step = (_registers[Mode1] & 0x20) != 0 ? 1 : 0;
        for (int i = 0; i < readBuffer.Length; i++)
        {
            readBuffer[i] = _registers[writeBuffer[0] + (i * step)];
        }
    }

    protected override void Dispose(bool disposing)
    {
        IsDisposed = true;
        base.Dispose(disposing);
    }

    private void Answer()
    {
        if (IsGone)
        {
            throw new IOException("Error 121 performing I2C data transfer.");
        }
    }

    private void Put(int register, byte value)
    {
        if (Disobeys || (register == Prescaler && (_registers[Mode1] & 0x10) == 0))
        {
            return;
        }

        if (register is >= AllOnLow and < Prescaler)
        {
            for (int channel = 0; channel < 16; channel++)
            {
                _registers[6 + (4 * channel) + register - AllOnLow] = value;
            }

            return;
        }

        // Woken while channels ran, the chip tells that they can be started again.
        _registers[register] = value;
    }
}
