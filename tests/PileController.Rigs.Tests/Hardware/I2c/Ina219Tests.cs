using PileController.Rigs.Hardware.I2c;

namespace PileController.Rigs.Tests.Hardware.I2c;

public sealed class Ina219Tests : IDisposable
{
    private readonly MonitorChip _chip = new();
    private readonly List<TimeSpan> _pauses = [];

    public void Dispose() => _chip.Dispose();

    // The data sheet's worked example (SBOS448, from memory): 0x5D98 is 11.98 V, 0x07D0 is 20 mV.
    [Fact]
    public void Measure_RegistersOfTheDataSheetsExample_GiveItsVoltages()
    {
        _chip.Registers[2] = 0x5D98;
        _chip.Registers[1] = 0x07D0;
        (double bus, double shunt) = new Ina219(_chip, _pauses.Add).Measure();

        Assert.Equal(11.98, bus, 1e-9);
        Assert.Equal(0.020, shunt, 1e-9);
    }

    // Table of the shunt register at ±320 mV (SBOS448, from memory).
    [Theory]
    [InlineData(0x7D00, 0.32)]
    [InlineData(0x8300, -0.32)]
    [InlineData(0xFFFF, -0.00001)]
    public void Measure_ShuntRegister_HasASign(int register, double volts)
    {
        _chip.Registers[1] = (ushort)register;

        Assert.Equal(volts, new Ina219(_chip, _pauses.Add).Measure().ShuntVolts, 1e-9);
    }

    [Fact]
    public void Measure_SupplyDipped_ConfiguresAgainAndWaitsForBothMeans()
    {
        Ina219 monitor = new(_chip, _pauses.Add);
        monitor.Measure();
        monitor.Measure();
        Assert.Equal([0, 0x3F, 0xFF], Assert.Single(_chip.Written));
        _chip.Registers[0] = 0x399F;
        monitor.Measure();

        Assert.Equal(2, _chip.Written.Count);

        // Two means of 128 samples, 68.1 ms each (data sheet, from memory).
        Assert.All(_pauses, pause => Assert.True(pause >= TimeSpan.FromMilliseconds(136.2)));
        Assert.Equal(2, _pauses.Count);
    }
}
