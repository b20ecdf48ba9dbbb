using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Decisions;
using PileController.Control.Regulation;
using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Inputs;
using PileController.Rigs.Hardware.Ports;
using PileController.Rigs.Tests.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware;

public sealed class GpioRigOutputsTests : IDisposable
{
    private const string Device = "platform/clock.pwm";
    private const int Relay = 17;
    private const int Backup = 4;
    private const int Open = 5;
    private const int Shut = 6;

    private static readonly HardwareSettings Mixed = new()
    {
        Pump = new LoadSettings { Drive = LoadDrive.Pwm, Channel = 1, Least = 0.2 },
        PumpPin = Relay,
        Blower = new LoadSettings { Drive = LoadDrive.I2cPwm, Channel = 5 },
        PwmChip = Device,
        BackupLine = Backup,
        Valve = new ValveSettings { OpenLine = Open, ShutLine = Shut },
    };

    private readonly FakeGpioDriver _driver = new();
    private readonly FakeTimeProvider _time = new();
    private readonly PwmTree _tree = new();
    private readonly Pca9685Device _chip = new();
    private readonly List<string> _reports = [];

    public GpioRigOutputsTests() => _tree.Add(3, Device, 2);

    private double Pump => _tree.Share(_tree.ChannelOf(3, Device, 1));

    private bool AllIsOff =>
        Pump == 0 && _chip.Share(5) == 0 && !((int[])[Relay, Backup, Open, Shut]).Any(_driver.IsHigh);

    public void Dispose()
    {
        _driver.Dispose();
        _tree.Dispose();
        _chip.Dispose();
    }

    [Fact]
    public async Task Ctor_EveryKindOfOutput_IsOff()
    {
        await using GpioRig rig = Make(Mixed);

        Assert.True(AllIsOff);
    }

    [Fact]
    public async Task ApplyAsync_EveryKindOfOutput_DoesItsPart()
    {
        await using GpioRig rig = Make(Mixed);
        await rig.ApplyAsync(new Outputs(0.5, 1, 0.25, true), CancellationToken.None);
        _time.Advance(TimeSpan.FromSeconds(2));

        Assert.Equal(0.6, Pump, 3);
        Assert.Equal(0.25, _chip.Share(5));
        Assert.True(_driver.IsHigh(Relay) && _driver.IsHigh(Backup) && _driver.IsHigh(Open) && !_driver.IsHigh(Shut));
    }

    [Fact]
    public async Task OnDue_AValveBetweenTwoBeats_IsStoppedWhenItHasArrived()
    {
        await using GpioRig rig = Make(Mixed);
        await rig.ApplyAsync(new Outputs(0, 1, 0, true), CancellationToken.None);
        Pass(40);
        Assert.False(_driver.IsHigh(Open));
        await rig.ApplyAsync(new Outputs(0, 0.88, 0, true), CancellationToken.None);

        // 0.12 of 30 s.
        Pass(3.5);
        Assert.True(_driver.IsHigh(Shut));
        Pass(0.2);
        Assert.False(_driver.IsHigh(Shut));
    }

    [Fact]
    public async Task ApplyHeldAsync_NothingWithTheLoopSilentAfter_RunsShutAndThenWhereItIsSafe()
    {
        await using GpioRig rig = Make(Mixed);
        await rig.ApplyAsync(new Outputs(0, 1, 0, false), CancellationToken.None);
        Pass(40);
        await rig.ApplyAsync(Outputs.Safe, CancellationToken.None);
        Pass(3);
        Assert.False(_driver.IsHigh(Shut));
        await rig.ApplyHeldAsync(Outputs.Safe, CancellationToken.None);
        Pass(3);
        Assert.True(_driver.IsHigh(Shut));

        // It stays where it is when made safe.
        _time.Advance(TimeSpan.FromSeconds(240));
        Assert.True(AllIsOff);
    }

    [Fact]
    public async Task OnBeat_LoopFallsSilent_MakesEveryKindOfOutputSafe()
    {
        await using GpioRig rig = Make(Mixed);
        await rig.ApplyAsync(new Outputs(1, 1, 1, true), CancellationToken.None);
        _time.Advance(TimeSpan.FromSeconds(240));

        Assert.True(AllIsOff);
        Assert.Contains("silent", Assert.Single(_reports), StringComparison.Ordinal);
    }

    [Fact]
    public async Task DisposeAsync_WhileAllRuns_IsOffAndLetsGo()
    {
        GpioRig rig = Make(Mixed);
        await rig.ApplyAsync(new Outputs(1, 1, 1, true), CancellationToken.None);
        await rig.DisposeAsync();

        Assert.True(AllIsOff);
        Assert.True(_chip.IsDisposed);
    }

    [Fact]
    public async Task ApplyAsync_I2cChipGone_IsToldOnceAndTheOthersObey()
    {
        await using GpioRig rig = Make(Mixed);
        _chip.IsGone = true;

        RigFaultException error = await Assert.ThrowsAsync<RigFaultException>(
            () => rig.ApplyAsync(new Outputs(0.5, 0, 0.5, true), CancellationToken.None).AsTask());
        _time.Advance(TimeSpan.FromSeconds(5));

        Assert.Contains("blower's channel 5 of the PWM chip at 0x40", error.Message, StringComparison.Ordinal);
        Assert.Single(_reports);
        Assert.True(_driver.IsHigh(Relay) && _driver.IsHigh(Backup));
        _chip.IsGone = false;
    }

    [Fact]
    public void Ctor_AnythingMissing_IsToldBeforeAnyOutputMoves()
    {
        (HardwareSettings Hardware, string Words)[] missing =
        [
            (Mixed with { PwmChip = "elsewhere" }, "elsewhere"), (Mixed with { BackupLine = 54 }, "rig.hardware.backupLine is 54"),
            (Mixed with { Valve = Mixed.Valve with { ShutLine = 60 } }, "rig.hardware.valve.shutLine is 60"),
            (Mixed with { Pump = Mixed.Pump with { Channel = 2 } }, "no channel 2"),
        ];
        Assert.All(missing, row => Assert.Contains(
            row.Words, Assert.Throws<RigFaultException>(() => Make(row.Hardware)).Message, StringComparison.Ordinal));
        _chip.IsGone = true;
        Assert.Contains("0x40", Assert.Throws<RigFaultException>(() => Make(Mixed)).Message, StringComparison.Ordinal);
        Assert.Empty(_driver.Deeds);
        Assert.Empty(_chip.Seen);
    }

    [Fact]
    public void Ctor_SomethingAfterTheLoadsFails_LetsGoOfThePorts()
    {
        _driver.StubbornPins.Add(22);

        Assert.Contains("lamp", Assert.Throws<RigFaultException>(() => Make(Mixed with { LampLine = 22 })).Message, StringComparison.Ordinal);
        Assert.True(_chip.IsDisposed);
        Assert.True(AllIsOff);
    }

    [Fact]
    public void Ctor_OutputsThatCannotBe_AreRefusedByName()
    {
        (HardwareSettings Hardware, string Words)[] bad =
        [
            (Mixed with { BackupLine = Relay }, "BackupLine is 17, and so is Hardware.PumpPin"),
            (Mixed with { Valve = Mixed.Valve with { ShutLine = Open } }, "Valve.ShutLine is 5, and so is Hardware.Valve.OpenLine"),
            (Mixed with { Valve = Mixed.Valve with { ShutLine = null } }, "Valve.ShutLine is none"),
            (Mixed with { Blower = Mixed.Pump }, "Blower.Channel is 1"),
            (Mixed with { Blower = Mixed.Blower with { Channel = null } }, "Blower.Channel is none"),
            (Mixed with { Blower = Mixed.Blower with { Inverted = true } }, "Blower.Inverted is true"),
            (Mixed with { PwmChip = null }, "PwmChip is none"),
        ];
        Assert.All(bad, row => Assert.Contains(
            row.Words, Assert.Throws<ArgumentException>(() => Make(row.Hardware)).Message, StringComparison.Ordinal));
        Assert.Contains("ValveTravelSeconds is 0", Assert.Throws<ArgumentException>(() => Make(Mixed, travel: 0)).Message, StringComparison.Ordinal);
        Assert.Empty(_driver.Deeds);
    }

    private void Pass(double seconds)
    {
        for (int tenth = 0; tenth < Math.Round(10 * seconds); tenth++)
        {
            _time.Advance(TimeSpan.FromSeconds(0.1));
        }
    }

    private GpioRig Make(HardwareSettings hardware, double travel = 30)
    {
        GpioController controller = new(_driver);
        return new GpioRig(
            controller, new RigSettings { Simulated = false, Probes = [], Hardware = hardware }, new ValveMotion(travel, ValveFeedback.None), _time,
            _reports.Add, new InputPorts(), new OutputPorts(hardware, () => controller, _tree.Files, (_, _) => _chip));
    }
}
