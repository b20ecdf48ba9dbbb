using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware;
using PileController.Rigs.Tests.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware;

public sealed class GpioRigContractTests : RigContract, IDisposable
{
    private const int Pump = 17;
    private const int Blower = 27;

    private readonly FakeGpioDriver _driver = new();
    private readonly ProbeTree _tree = new();

    public GpioRigContractTests()
    {
        _tree.Write(1, HouseCelsius);
        _tree.Write(2, 30);
        _tree.Write(3, 40);
    }

    protected override bool AllIsOff => !_driver.IsHigh(Pump) && !_driver.IsHigh(Blower);

    public void Dispose() => _tree.Dispose();

    protected override IRig Make() => new GpioRig(
        new GpioController(_driver),
        new RigSettings
        {
            Simulated = false,
            Probes =
            [
                new(Channel.House, Address: ProbeTree.Address(1)),
                new(Channel.Tank, Address: ProbeTree.Address(2)),
                new(Channel.Supply, Address: ProbeTree.Address(3)),
                new(Channel.Flow),
            ],
            Hardware = new HardwareSettings { OneWireRoot = _tree.Root, PumpPin = Pump, BlowerPin = Blower },
        },
        default,
        new FakeTimeProvider(),
        report => Assert.Fail(report));

    protected override void BreakTank() => _tree.Remove(2);
}
