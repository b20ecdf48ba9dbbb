using PileController.Control.Decisions;
using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Loads;

namespace PileController.Rigs.Tests.Hardware.Loads;

public sealed class ModulatedLoadTests : IDisposable
{
    private readonly List<string> _deeds = [];
    private readonly FakeOutput _signal;
    private readonly FakeOutput _series;

    public ModulatedLoadTests()
    {
        _signal = new FakeOutput("channel 0", _deeds);
        _series = new FakeOutput("line 17", _deeds);
    }

    public void Dispose()
    {
        _signal.Dispose();
        _series.Dispose();
    }

    [Fact]
    public void Drive_Running_SetsTheSignalBeforeTheRelay()
    {
        Assert.Null(Drive(Make(), 0.5));

        Assert.Equal(["channel 0 0.6", "line 17 1"], _deeds);
    }

    [Fact]
    public void Drive_NoDuty_OpensTheRelayBeforeTheSignalFalls()
    {
        ModulatedLoad load = Make();
        Drive(load, 0.5);
        _deeds.Clear();
        Assert.Null(Drive(load, 0));

        Assert.Equal(["line 17 0", "channel 0 safe"], _deeds);
    }

    [Fact]
    public void Drive_InvertedAndStanding_HoldsTheFullSignal()
    {
        Drive(Make(inverted: true), 0);

        Assert.Equal(["line 17 0", "channel 0 1"], _deeds);
    }

    [Fact]
    public void Drive_SignalCannotBeSet_OpensTheRelayAndTells()
    {
        ModulatedLoad load = Make();
        Drive(load, 0.5);
        _signal.Fails = true;
        RigFaultException? fault = Drive(load, 0.9);

        Assert.Equal("The pump's channel 0 cannot be set: it is broken", fault?.Message);
        Assert.Equal(0, _series.Share);
        Assert.True(load.IsFailing);
        _signal.Fails = false;
        Assert.Null(Drive(load, 0.9));
        Assert.False(load.IsFailing);
    }

    [Fact]
    public void SwitchOff_RelayFails_StopsTheSignalAllTheSame()
    {
        ModulatedLoad load = Make();
        Drive(load, 0.5);
        _series.Fails = true;

        Assert.Contains("line 17 cannot be switched off", load.SwitchOff()?.Message, StringComparison.Ordinal);
        Assert.Equal(0, _signal.Share);
        _series.Fails = false;
    }

    [Fact]
    public void SwitchOff_WhileRunning_StaysOffWhenDrivenOn()
    {
        ModulatedLoad load = Make();
        Drive(load, 0.5);
        load.SwitchOff();
        load.Drive(2, []);

        Assert.Equal((0, 0), (_signal.Share, _series.Share));
    }

    private static RigFaultException? Drive(ModulatedLoad load, double duty)
    {
        load.Want(new Outputs(duty, 0, 0, false), valveIsHeld: false);
        return load.Drive(1, []);
    }

    private ModulatedLoad Make(bool inverted = false) => new("pump", _signal, new SignalMap(0.2, 1, inverted), _series, o => o.PumpDuty);
}
