using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Ports;

public sealed class Pca9685OutputContractTests : OutputContract, IDisposable
{
    private readonly Pca9685Device _device = new();

    protected override double Seen => _device.Share(5);

    protected override IReadOnlyList<double> SeenSince => _device.Seen;

    public void Dispose() => _device.Dispose();

    private protected override IOutput Make()
    {
        _device.Seen.Clear();
        return new Pca9685Output(new Pca9685(_device, 1000, () => { }), 5);
    }

    protected override void LeaveOn()
    {
        using Pca9685 chip = new(_device, 200, () => { });
        chip.Write(5, 0.7);
    }

    protected override void Disobey() => _device.Disobeys = true;
}
