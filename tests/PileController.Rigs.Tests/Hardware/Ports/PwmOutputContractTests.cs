using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Ports;

public sealed class PwmOutputContractTests : OutputContract, IDisposable
{
    private const string Device = "platform/clock.pwm";

    private readonly PwmTree _tree = new();
    private readonly string _channel;

    public PwmOutputContractTests()
    {
        _tree.Add(2, Device, 2);
        _tree.Watched = _channel = _tree.ChannelOf(2, Device, 1);
    }

    protected override double Seen => _tree.Share(_channel);

    protected override IReadOnlyList<double> SeenSince => _tree.Seen;

    public void Dispose() => _tree.Dispose();

    private protected override IOutput Make() => new PwmOutput(PwmChip.Find(Device, _tree.Files), 1, 1000, _tree.Files);

    protected override void LeaveOn() => _tree.Leave(_channel, 20_000_000, 15_000_000, 1);

    protected override void Disobey() => _tree.Disobeys = true;
}
