using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Inputs;
using PileController.Rigs.Hardware.Ports;
using PileController.Rigs.Tests.Hardware.I2c;
using PileController.Rigs.Tests.Hardware.Lines;
using PileController.Rigs.Tests.Hardware.OneWire;

namespace PileController.Rigs.Tests.Ports;

/// <summary>A probe of the real rig, over devices that are simulated at their files, registers and lines.</summary>
/// <param name="probe">The probe.</param>
/// <param name="set">Sets the truth at the devices.</param>
/// <param name="cut">Cuts the probe off.</param>
internal sealed class InputBench(ProbeFit probe, Action<InputBench, double> set, Action<InputBench> cut) : IPortBench
{
    public const int Line = 5;

    private int _ticks;

    public FakeTimeProvider Time { get; } = new();

    public FakeLines Lines { get; } = new();

    public ProbeTree Tree { get; } = new();

    public ConverterChip Converter { get; } = new() { Volts = { [3] = 3.3 } };

    public AirChip Air { get; } = new();

    public MonitorChip Monitor { get; } = new();

    public GasChip Gas => field ??= new GasChip(Time);

    public IRig Make()
    {
        GpioController controller = new(Lines);
        RigSettings settings = new()
        {
            Simulated = false,
            Probes = [probe],
            PulsesPerLitre = 450,
            Hardware = new HardwareSettings { OneWireRoot = Tree.Root },
        };
        InputPorts inputs = new()
        {
            OpenI2c = place => place.DeviceAddress switch { 0x48 => Converter, 0x44 => Air, 0x62 => Gas, _ => Monitor },
            Pause = _ => { },
        };
        return new GpioRig(controller, settings, default, Time, _ => { }, inputs, OutputPorts.Of(settings.Hardware, () => controller));
    }

    public async Task SetAsync(IRig rig, double value)
    {
        set(this, value);
        await ReadAsync(rig);
        set(this, value);
    }

    public async Task<Reading> ReadAsync(IRig rig)
    {
        // The test's own clock stands still: a bus that hangs for good must fail the test, not hold it.
        RigReadings readings = await rig.ReadAsync(Ticks.At(_ticks++), CancellationToken.None).AsTask().WaitAsync(TimeSpan.FromSeconds(30));
        return readings[probe.Channel];
    }

    public void Break() => cut(this);

    public void Dispose()
    {
        Tree.Dispose();
        Converter.Dispose();
        Air.Dispose();
        Monitor.Dispose();
        Gas.Dispose();
    }
}
