using PileController.Control.Readings;
using PileController.Rigs.Tests.Hardware.I2c;
using PileController.Rigs.Tests.Hardware.OneWire;

namespace PileController.Rigs.Tests.Ports;

/// <summary>What every thermometer owes.</summary>
public abstract class ThermometerContract : PortContract
{
    private protected ThermometerContract(IPortBench bench)
        : base(bench)
    {
    }

    protected override Channel Channel => Channel.House;

    protected override double Some => 11.5;

    // SEN-020: DS18B20 accuracy ±0.5 °C, data sheet rev 042208. The others have to keep it too.
    [Theory]
    [InlineData(-20)]
    [InlineData(0)]
    [InlineData(11.5)]
    [InlineData(45)]
    public async Task ReadAsync_Settled_IsWithinHalfAKelvin(double celsius) => Assert.Equal(celsius, await SaysAsync(celsius), 0.5);

    private protected static ProbeFit OnI2c(ProbeWiring wiring) => new(Channel.House) { Wiring = wiring with { Bus = 1 } };
}

public sealed class SimulatedThermometerTests() : ThermometerContract(new SimulatedBench(Channel.House));

public sealed class OneWireThermometerTests() : ThermometerContract(new InputBench(
    new(Channel.House, Address: ProbeTree.Address(1)),
    (bench, celsius) => bench.Tree.Write(1, celsius),
    bench => bench.Tree.Remove(1)));

public sealed class AirProbeTests() : ThermometerContract(new InputBench(
    OnI2c(new() { Source = ProbeSource.Sht4x, Device = 0x44 }),
    (bench, celsius) => bench.Air.Bytes = AirChip.Of(celsius),
    bench => bench.Air.FailNext = int.MaxValue));

public sealed class PlatinumThermometerTests() : ThermometerContract(new InputBench(
    OnI2c(new() { Source = ProbeSource.Ads1115, Device = 0x48, Input = 0, Sensor = ResistorKind.Pt1000, ReferenceOhms = 2200, ExcitationInput = 3 }),
    (bench, celsius) => bench.Converter.Volts[0] = 3.3 * Ohms(celsius) / (Ohms(celsius) + 2200),
    bench => bench.Converter.Volts[0] = 3.3))
{
    // IEC 60751 table of Pt100, as printed at sensorsci.com/reference.htm; 11.5 and 45 °C between its rows.
    private static double Ohms(double celsius) => celsius switch
    {
        -20 => 921.6,
        0 => 1000,
        11.5 => 1039.0 + (0.15 * (1077.9 - 1039.0)),
        _ => (1155.4 + 1194.0) / 2,
    };
}

public sealed class ThermistorTests() : ThermometerContract(new InputBench(
    OnI2c(new()
    {
        Source = ProbeSource.Ads1115,
        Device = 0x48,
        Input = 1,
        Sensor = ResistorKind.Ntc,
        ReferenceOhms = 10_000,
        OhmsAt25C = 10_000,
        BetaKelvin = 3950,
        ExcitationVolts = 3.3,
    }),
    (bench, celsius) => bench.Converter.Volts[1] = 3.3 * Ohms(celsius) / (Ohms(celsius) + 10_000),
    bench => bench.Converter.Volts[1] = 0))
{
    private static double Ohms(double celsius) => 10_000 * Math.Exp(3950 * ((1 / (celsius + 273.15)) - (1 / 298.15)));
}
