using System.Device.I2c;

namespace PileController.Rigs.Tests.Hardware.I2c;

/// <summary>A device on a bus of the test's own: may fail, be slow or hang, and remembers what was written.</summary>
internal abstract class FakeChip : I2cDevice
{
    /// <summary>What was written, transfer by transfer.</summary>
    public List<byte[]> Written { get; } = [];

    /// <summary>How many of the next transfers fail.</summary>
    public int FailNext { get; set; }

    /// <summary>Done in each transfer, before it is answered: a delay, a hang.</summary>
    public Action? OnTransfer { get; set; }

    /// <summary>Transfers asked for.</summary>
    public int Transfers { get; private set; }

    public override I2cConnectionSettings ConnectionSettings { get; } = new(1, 0x40);

    public override void Read(Span<byte> buffer)
    {
        Begin();
        Answer(buffer);
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        Begin();
        Written.Add(buffer.ToArray());
        Take(buffer);
    }

    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Begin();
        Take(writeBuffer);
        Answer(readBuffer);
    }

    protected abstract void Take(ReadOnlySpan<byte> bytes);

    protected abstract void Answer(Span<byte> bytes);

    private void Begin()
    {
        Transfers++;
        OnTransfer?.Invoke();
        if (FailNext > 0)
        {
            FailNext--;
            throw new IOException("Error 121 performing I2C data transfer.");
        }
    }
}

/// <summary>A device of 16-bit registers, high byte first, with a pointer.</summary>
internal class RegisterChip : FakeChip
{
    private byte _pointer;

    public Dictionary<byte, ushort> Registers { get; } = [];

    protected override void Take(ReadOnlySpan<byte> bytes)
    {
        _pointer = bytes[0];
        if (bytes.Length == 3)
        {
            Registers[_pointer] = (ushort)((bytes[1] << 8) | bytes[2]);
            OnWritten(_pointer);
        }
    }

    protected override void Answer(Span<byte> bytes)
    {
        OnRead(_pointer);
        ushort value = Registers.GetValueOrDefault(_pointer);
        (bytes[0], bytes[1]) = ((byte)(value >> 8), (byte)(value & 0xFF));
    }

    protected virtual void OnWritten(byte register)
    {
    }

    protected virtual void OnRead(byte register)
    {
    }
}

/// <summary>Converts the voltage of the input its configuration names, in the range it names; busy for some looks.</summary>
internal sealed class ConverterChip : RegisterChip
{
    private int _busy;

    /// <summary>Voltage at each input, V.</summary>
    public double[] Volts { get; } = new double[4];

    /// <summary>How many looks a conversion outlasts.</summary>
    public int BusyLooks { get; set; }

    protected override void OnWritten(byte register)
    {
        // Start bit, input against ground, ±4.096 V, single conversion: else this device would not do it.
        ushort word = Registers[1];
        Assert.Equal(0x8000, word & 0x8000);
        Assert.Equal(0x4000, word & 0x4000);
        Assert.Equal(0x0200, word & 0x0E00);
        Assert.Equal(0x0100, word & 0x0100);
        _busy = BusyLooks;
        double steps = Math.Round(Volts[(word >> 12) & 3] / 4.096 * 32768);
        Registers[0] = unchecked((ushort)(short)Math.Clamp(steps, short.MinValue, short.MaxValue));
    }

    protected override void OnRead(byte register)
    {
        if (register == 1)
        {
            Registers[1] = (ushort)(_busy-- > 0 ? Registers[1] & 0x7FFF : Registers[1] | 0x8000);
        }
    }
}

/// <summary>Answers a measuring command with six bytes.</summary>
internal sealed class AirChip : FakeChip
{
    /// <summary>The six bytes of the next answer.</summary>
    public byte[] Bytes { get; set; } = Words(0x6666, 0x8000);

    /// <summary>Two words, each with the checksum it would have on the wire.</summary>
    public static byte[] Words(ushort temperature, ushort humidity) => [.. Word(temperature), .. Word(humidity)];

    /// <summary>The words of a temperature.</summary>
    public static byte[] Of(double celsius, double percent = 56.5) =>
        Words((ushort)Math.Round((celsius + 45) / 175 * 65535), (ushort)Math.Round((percent + 6) / 125 * 65535));

    protected override void Take(ReadOnlySpan<byte> bytes) => Assert.Equal([0xFD], bytes.ToArray());

    protected override void Answer(Span<byte> bytes) => Bytes.CopyTo(bytes);

    // Bit by bit and not as the program does it: the remainder of the message followed by eight zeros.
    internal static byte[] Word(ushort word)
    {
        int remainder = (word ^ 0xFFFF << 8 & 0xFFFF) << 8;
        for (int bit = 23; bit >= 8; bit--)
        {
            remainder ^= (remainder >> bit & 1) != 0 ? 0x131 << (bit - 8) : 0;
        }

        return [(byte)(word >> 8), (byte)(word & 0xFF), (byte)(remainder & 0xFF)];
    }
}

/// <summary>Two voltages, as the power monitor's registers show them.</summary>
internal sealed class MonitorChip : RegisterChip
{
    public MonitorChip() => Registers[0] = 0x399F;

    /// <summary>Lets the load have a voltage and a current.</summary>
    public void Carry(double busVolts, double amperes, double shuntOhms)
    {
        Registers[2] = (ushort)(((int)Math.Round(busVolts / 0.004) << 3) | 2);
        Registers[1] = unchecked((ushort)(short)Math.Clamp(Math.Round(amperes * shuntOhms / 0.00001), -32000, 32000));
    }
}
