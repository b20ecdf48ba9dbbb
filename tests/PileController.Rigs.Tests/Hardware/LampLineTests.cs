using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Decisions;
using PileController.Rigs.Hardware;

namespace PileController.Rigs.Tests.Hardware;

/// <summary>The lamp burns whenever its line is let go: at the start, in silence, at the end.</summary>
public sealed class LampLineTests : IDisposable
{
    private const int Lamp = 22;
    private const int Pulse = 23;

    private readonly FakeGpioDriver _driver = new();
    private readonly FakeTimeProvider _time = new();
    private readonly List<string> _reports = [];

    public void Dispose() => _driver.Dispose();

    [Theory]
    [InlineData(false, "low")]
    [InlineData(true, "high")]
    public async Task Ctor_AnyPolarity_OpensTheLineLetGo(bool activeLow, string letGo)
    {
        await using GpioRig rig = Make(activeLow);
        Assert.Equal([$"open {Lamp}", $"output {Lamp} {letGo}"], _driver.Deeds);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Say_AllIsWell_HoldsTheLineUntilItIsSaidOtherwise(bool activeLow)
    {
        await using GpioRig rig = Make(activeLow);
        rig.Lamp!.Say(true);
        Second();
        Assert.True(IsHeld(activeLow));
        rig.Lamp.Say(false);
        Second();
        Assert.False(IsHeld(activeLow));
    }

    [Fact]
    public async Task Say_NobodySaysAnythingAnyMore_LetsTheLineGo()
    {
        await using GpioRig rig = Make();
        rig.Lamp!.Say(true);
        for (int i = 0; i < 10; i++)
        {
            Second();
            Assert.True(IsHeld(false), $"second {i}");
        }

        Second();
        Assert.False(IsHeld(false));
    }

    [Fact]
    public async Task DisposeAsync_WhileAllIsWell_LetsTheLineGo()
    {
        GpioRig rig = Make();
        rig.Lamp!.Say(true);
        Second();
        await rig.DisposeAsync();
        Assert.False(IsHeld(false));
        Assert.Contains($"write {Lamp} low", _driver.Deeds);
    }

    [Fact]
    public async Task Say_ALineThatBeats_ChangesEverySecondWhileAllIsWell()
    {
        await using GpioRig rig = Make(beats: true);
        string seen = "";
        for (int i = 0; i < 6; i++)
        {
            rig.Lamp!.Say(true);
            Second();
            seen += IsHeld(false) ? '1' : '0';
        }

        rig.Lamp!.Say(false);
        Second();
        Second();
        seen += IsHeld(false) ? '1' : '0';
        Assert.Equal("1010100", seen);
    }

    [Fact]
    public async Task ALineThatFails_IsReportedOnceAndDoesNotDisturbTheLoads()
    {
        await using GpioRig rig = Make();
        _driver.BrokenPins.Add(Lamp);
        rig.Lamp!.Say(true);
        Second();
        Second();
        Assert.Contains("lamp's line 22", Assert.Single(_reports), StringComparison.Ordinal);
        await rig.ApplyAsync(Outputs.Safe, CancellationToken.None);
    }

    [Fact]
    public void Ctor_ALineThatStaysAnInput_IsRefused()
    {
        _driver.StubbornPins.Add(Lamp);
        Assert.Contains("lamp", Assert.Throws<RigFaultException>(() => Make()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ctor_ALineThatIsALoads_IsRefused() =>
        Assert.Contains("LampLine is 22", Assert.Throws<ArgumentException>(() => Make(pump: Lamp)).Message, StringComparison.Ordinal);

    [Fact]
    public async Task Pulse_OnlyWhileAllIsWell_ChangesEverySecond()
    {
        HardwareSettings hardware = new() { PulseLine = Pulse };
        await using GpioRig rig = new(
            new GpioController(_driver), new RigSettings { Simulated = false, Probes = [], Hardware = hardware }, default, _time, _reports.Add);
        string seen = "";
        for (int i = 0; i < 6; i++)
        {
            rig.Pulse!.Say(true);
            Second();
            seen += _driver.IsHigh(Pulse) ? '1' : '0';
        }

        rig.Pulse!.Say(false);
        for (int i = 0; i < 3; i++)
        {
            Second();
            seen += _driver.IsHigh(Pulse) ? '1' : '0';
        }

        Assert.Equal("101010000", seen);
    }

    private bool IsHeld(bool activeLow) => _driver.IsHigh(Lamp) != activeLow;

    private void Second() => _time.Advance(TimeSpan.FromSeconds(1));

    private GpioRig Make(bool activeLow = false, bool beats = false, int? pump = null)
    {
        RigSettings settings = new()
        {
            Simulated = false,
            Probes = [],
            Hardware = new HardwareSettings { PumpPin = pump, LampLine = Lamp, LampBeats = beats, ActiveLow = activeLow },
        };
        return new GpioRig(new GpioController(_driver), settings, default, _time, _reports.Add);
    }
}
