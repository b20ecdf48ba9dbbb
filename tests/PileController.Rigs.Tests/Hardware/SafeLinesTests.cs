using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Regulation;
using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Ports;
using PileController.Rigs.Tests.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware;

public sealed class SafeLinesTests : IDisposable
{
    private const string Device = "platform/clock.pwm";

    private static readonly ValveMotion Motion = new(30, ValveFeedback.None);
    private static readonly HardwareSettings Mixed = new()
    {
        Pump = new LoadSettings { Drive = LoadDrive.Pwm, Channel = 1 },
        Blower = new LoadSettings { Drive = LoadDrive.I2cPwm, Channel = 5 },
        PwmChip = Device,
        BackupLine = 4,
        Valve = new ValveSettings { OpenLine = 5, ShutLine = 6 },
    };

    private readonly FakeGpioDriver _driver = new();
    private readonly FakeTimeProvider _time = new();
    private readonly PwmTree _tree = new();
    private readonly Pca9685Device _chip = new();

    public SafeLinesTests() => _tree.Add(0, Device, 2);

    public void Dispose()
    {
        _driver.Dispose();
        _tree.Dispose();
        _chip.Dispose();
    }

    [Theory]
    [InlineData(false, "low")]
    [InlineData(true, "high")]
    public async Task SetAsync_AnyPolarity_SwitchesEveryLoadOff(bool activeLow, string off)
    {
        SafeLinesResult safe = await Set(new HardwareSettings { PumpPin = 17, BlowerPin = 27, ActiveLow = activeLow });

        Assert.Empty(safe.Faults);
        Assert.Contains($"output 17 {off}", _driver.Deeds);
        Assert.Contains($"output 27 {off}", _driver.Deeds);
    }

    [Fact]
    public async Task SetAsync_ALineThatCannotBeTaken_IsToldAndTheOthersAreSwitchedOff()
    {
        _driver.BrokenPins.Add(17);

        SafeLinesResult safe = await Set(new HardwareSettings { PumpPin = 17, BlowerPin = 27 });

        Assert.Contains("pump", Assert.Single(safe.Faults), StringComparison.Ordinal);
        Assert.Contains("output 27 low", _driver.Deeds);
    }

    [Theory]
    [InlineData(false, "low")]
    [InlineData(true, "high")]
    public async Task SetAsync_ALampLeftHeld_IsLetGoAfterTheLoads(bool activeLow, string free)
    {
        await Set(new HardwareSettings { PumpPin = 17, LampLine = 22, PulseLine = 23, ActiveLow = activeLow });

        Assert.Contains($"output 22 {free}", _driver.Deeds);
        Assert.True(_driver.Deeds.IndexOf($"output 22 {free}") > _driver.Deeds.IndexOf($"output 17 {free}"));

        // A change there would feed the timer in series with the loads once more.
        Assert.DoesNotContain(_driver.Deeds, deed => deed.Contains("23", StringComparison.Ordinal));
    }

    [Fact]
    public async Task SetAsync_ALampThatCannotBeTaken_IsToldAndIsNoLoadLeftOn()
    {
        _driver.StubbornPins.Add(22);

        SafeLinesResult safe = await Set(new HardwareSettings { PumpPin = 17, LampLine = 22 });

        Assert.Empty(safe.Faults);
        Assert.Contains("lamp's line 22", Assert.Single(safe.News), StringComparison.Ordinal);
    }

    [Fact]
    public async Task SetAsync_NothingFitted_IsSafeAlready()
    {
        Assert.Empty((await Set(new HardwareSettings())).Faults);
        Assert.Empty(_driver.Deeds);
    }

    [Fact]
    public async Task SetAsync_AllKindsLeftRunning_AreAllOff()
    {
        string channel = LeaveAllOn();

        SafeLinesResult safe = await Set(Mixed);

        Assert.Empty(safe.Faults);
        Assert.Equal((0, 0), (_tree.Share(channel), _chip.Share(5)));
        Assert.Equal((false, false, false), (_driver.IsHigh(4), _driver.IsHigh(5), _driver.IsHigh(6)));
    }

    [Fact]
    public async Task SetAsync_NoLineChip_StillPutsPwmOff()
    {
        string channel = LeaveAllOn();

        SafeLinesResult safe = await Set(Mixed, () => throw new RigFaultException("no chip of that label"));

        Assert.Equal((0, 0), (_tree.Share(channel), _chip.Share(5)));
        Assert.Equal(2, safe.Faults.Count);
        Assert.All(safe.Faults, fault => Assert.Contains("no chip", fault, StringComparison.Ordinal));
    }

    [Fact]
    public async Task SetAsync_LoadsThatFailInAWayNobodyThoughtOf_KeepNothingElseOn()
    {
        string channel = LeaveAllOn();

        SafeLinesResult safe = await Set(Mixed, () => throw new InvalidOperationException("out of the blue"));

        Assert.Equal((0, 0), (_tree.Share(channel), _chip.Share(5)));
        Assert.Equal(["out of the blue", "out of the blue"], safe.Faults);
    }

    [Fact]
    public async Task SetAsync_AnotherPwmChipThatLeadsNowhere_IsPassedOver()
    {
        string channel = LeaveAllOn();
        _tree.AddBroken(9);

        Assert.Empty((await Set(Mixed)).Faults);
        Assert.Equal(0, _tree.Share(channel));
    }

    [Fact]
    public async Task SetAsync_NoI2cAndNoPwmChip_StillSwitchesLinesOff()
    {
        _chip.IsGone = true;

        SafeLinesResult safe = await Set(Mixed with { PwmChip = "elsewhere" });

        Assert.Equal(2, safe.Faults.Count);
        Assert.Contains("output 4 low", _driver.Deeds);
        Assert.Contains("output 6 low", _driver.Deeds);
    }

    [Theory]
    [InlineData(ValveSafe.Open, 5, 6)]
    [InlineData(ValveSafe.Shut, 6, 5)]
    public async Task SetAsync_AValveThatRunsToItsSafeEnd_RunsThereAndStops(ValveSafe safe, int driven, int other)
    {
        HardwareSettings hardware = Mixed with { Valve = Mixed.Valve with { Safe = safe } };
        double ran = 0;

        SafeLinesResult result = await Set(hardware, wait: wait =>
        {
            ran += _driver.IsHigh(driven) ? wait.TotalSeconds : 0;
            Assert.False(_driver.IsHigh(other));
        });

        Assert.Empty(result.Faults);
        Assert.Equal(36, ran, 0.5);
        Assert.False(_driver.IsHigh(driven));
        Assert.InRange(ran, 0, SafeLines.LongestSeconds(hardware, Motion));
        Assert.Equal(0, SafeLines.LongestSeconds(Mixed, Motion));
    }

    [Fact]
    public async Task SetAsync_StoppedOnTheWay_LeavesBothLinesOffAndSaysSo()
    {
        using CancellationTokenSource stop = new();
        HardwareSettings hardware = Mixed with { Valve = Mixed.Valve with { Safe = ValveSafe.Open } };
        int waits = 0;

        SafeLinesResult result = await Set(
            hardware,
            wait: _ =>
            {
                if (++waits == 20)
                {
                    stop.Cancel();
                }
            },
            cancellation: stop.Token);

        Assert.Contains("stopped on its way", Assert.Single(result.Faults), StringComparison.Ordinal);
        Assert.False(_driver.IsHigh(5));
    }

    private string LeaveAllOn()
    {
        string channel = _tree.ChannelOf(0, Device, 1);
        _tree.Leave(channel, 1_000_000, 900_000, 1);
        using Pca9685 chip = new(_chip, 1000, () => { });
        chip.Write(5, 0.6);
        foreach (int line in (int[])[4, 5])
        {
            _driver.Pull(line, PinValue.High);
        }

        Assert.True(_tree.Share(channel) > 0 && _chip.Share(5) > 0);
        return channel;
    }

    private async Task<SafeLinesResult> Set(
        HardwareSettings hardware, Func<GpioController>? lines = null, Action<TimeSpan>? wait = null, CancellationToken cancellation = default)
    {
        GpioController controller = new(_driver);
        using OutputPorts ports = new(hardware, lines ?? (() => controller), _tree.Files, (_, _) => _chip);
        return await SafeLines.SetAsync(ports, hardware, Motion, _time, Wait, cancellation);

        Task Wait(TimeSpan time, CancellationToken stop)
        {
            wait?.Invoke(time);
            _time.Advance(time);
            stop.ThrowIfCancellationRequested();
            return Task.CompletedTask;
        }
    }
}
