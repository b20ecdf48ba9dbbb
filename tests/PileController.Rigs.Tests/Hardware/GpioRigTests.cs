using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Decisions;
using PileController.Rigs.Hardware;

namespace PileController.Rigs.Tests.Hardware;

public sealed class GpioRigTests : IDisposable
{
    private const int Pump = 17;
    private const int Blower = 27;

    private readonly FakeGpioDriver _driver = new();
    private readonly FakeTimeProvider _time = new();
    private readonly List<string> _reports = [];

    public void Dispose() => _driver.Dispose();

    [Theory]
    [InlineData(false, "low")]
    [InlineData(true, "high")]
    public async Task Ctor_AnyPolarity_OpensBothLinesOffAtOnce(bool activeLow, string off)
    {
        await using GpioRig rig = Make(activeLow: activeLow);

        Assert.Equal([$"open {Pump}", $"output {Pump} {off}", $"open {Blower}", $"output {Blower} {off}"], _driver.Deeds);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task ApplyAsync_AnyPolarity_SwitchesTheLoads(bool activeLow)
    {
        await using GpioRig rig = Make(activeLow: activeLow);
        await Apply(rig, 1, 0);
        Assert.Equal((true, false), (_driver.IsHigh(Pump) != activeLow, _driver.IsHigh(Blower) != activeLow));
        await Apply(rig, 0, 1);
        Assert.Equal((false, true), (_driver.IsHigh(Pump) != activeLow, _driver.IsHigh(Blower) != activeLow));
    }

    [Fact]
    public async Task ApplyAsync_HalfDuty_IsSharedOutByTheTimer()
    {
        await using GpioRig rig = Make();
        await Apply(rig, 0.3, 0);
        string period = "";
        for (int second = 0; second < 20; second++)
        {
            period += _driver.IsHigh(Pump) ? '1' : '0';
            _time.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.Equal("11111100000000000000", period);
        Assert.True(_driver.IsHigh(Pump));
    }

    [Fact]
    public async Task ApplyAsync_Safe_SwitchesOffInTheMiddleOfAnOnTime()
    {
        await using GpioRig rig = Make();
        await Apply(rig, 0.9, 0.9);
        _time.Advance(TimeSpan.FromSeconds(3));
        Assert.True(_driver.IsHigh(Pump));
        await rig.ApplyAsync(Outputs.Safe, CancellationToken.None);

        Assert.False(_driver.IsHigh(Pump));
        Assert.False(_driver.IsHigh(Blower));
    }

    [Fact]
    public async Task DisposeAsync_WhileRunning_SwitchesOffBeforeTheLinesAreLetGo()
    {
        GpioRig rig = Make();
        await Apply(rig, 1, 1);
        _driver.Deeds.Clear();
        await rig.DisposeAsync();
        await rig.DisposeAsync();

        Assert.Equal([$"write {Pump} low", $"write {Blower} low"], _driver.Deeds[..2]);
        Assert.DoesNotContain(_driver.Deeds[2..], deed => deed.StartsWith("write", StringComparison.Ordinal));
        Assert.Equal("dispose", _driver.Deeds[^1]);
        Assert.Single(_driver.Deeds, "dispose");
        _time.Advance(TimeSpan.FromSeconds(30));
        Assert.Equal("dispose", _driver.Deeds[^1]);
        await Assert.ThrowsAsync<ObjectDisposedException>(() => Apply(rig, 1, 1));
    }

    [Fact]
    public async Task ApplyAsync_BrokenLine_ThrowsAndStillSwitchesTheOther()
    {
        await using GpioRig rig = Make();
        _driver.BrokenPins.Add(Pump);

        RigFaultException error = await Assert.ThrowsAsync<RigFaultException>(() => Apply(rig, 1, 1));
        Assert.Contains("pump's line 17", error.Message, StringComparison.Ordinal);
        Assert.Contains("line is busy", error.Message, StringComparison.Ordinal);
        Assert.True(_driver.IsHigh(Blower));
        Assert.Equal([error.Message], _reports);
        _driver.BrokenPins.Clear();
        await Apply(rig, 1, 1);
        Assert.True(_driver.IsHigh(Pump));
    }

    [Fact]
    public async Task ApplyAsync_ChipThatCouldBeReadAndIsGone_IsAFaultThoughWritesAreTaken()
    {
        await using GpioRig rig = Make();
        await Apply(rig, 1, 1);
        _driver.UnreadablePins.Add(Pump);

        RigFaultException error = await Assert.ThrowsAsync<RigFaultException>(() => Apply(rig, 1, 1));

        Assert.Contains("no such device", error.Message, StringComparison.Ordinal);
        _driver.UnreadablePins.Clear();
    }

    [Fact]
    public async Task ApplyAsync_ChipThatNeverReadsWhatItDrives_IsBelieved()
    {
        _driver.UnreadablePins.Add(Pump);
        await using GpioRig rig = Make();

        await Apply(rig, 1, 1);

        Assert.True(_driver.IsHigh(Pump));
    }

    [Fact]
    public async Task OnBeat_LineBreaksBetweenTicks_IsReportedOnceAndThrownAtTheNextTick()
    {
        await using GpioRig rig = Make();
        await Apply(rig, 0.5, 0);
        _driver.BrokenPins.Add(Pump);
        _time.Advance(TimeSpan.FromSeconds(4));
        Assert.Single(_reports);
        _driver.BrokenPins.Clear();
        _time.Advance(TimeSpan.FromSeconds(1));

        await Assert.ThrowsAsync<RigFaultException>(() => Apply(rig, 0.5, 0));
        await Apply(rig, 0.5, 0);
        Assert.Single(_reports);
    }

    [Fact]
    public async Task DisposeAsync_BrokenLine_ReportsWhatStayedOn()
    {
        GpioRig rig = Make();
        await Apply(rig, 1, 1);
        _driver.BrokenPins.Add(Pump);
        await rig.DisposeAsync();

        Assert.Contains("cannot be switched off", Assert.Single(_reports), StringComparison.Ordinal);
        Assert.False(_driver.IsHigh(Blower));
        _driver.BrokenPins.Clear();
    }

    [Fact]
    public async Task OnBeat_LoopFallsSilent_SwitchesOffAndSaysSoOnce()
    {
        await using GpioRig rig = Make();
        await Apply(rig, 1, 1);
        _time.Advance(TimeSpan.FromSeconds(180));
        Assert.True(_driver.IsHigh(Pump));
        _time.Advance(TimeSpan.FromSeconds(60));

        Assert.False(_driver.IsHigh(Pump));
        Assert.False(_driver.IsHigh(Blower));
        Assert.Contains("silent", Assert.Single(_reports), StringComparison.Ordinal);
        await Apply(rig, 1, 0);
        Assert.True(_driver.IsHigh(Pump));
    }

    [Theory]
    [InlineData(1.2)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public async Task ApplyAsync_NoShare_IsRefusedAndChangesNothing(double duty)
    {
        await using GpioRig rig = Make();
        await Apply(rig, 1, 0);
        _driver.Deeds.Clear();

        ArgumentException error = await Assert.ThrowsAsync<ArgumentException>(() => Apply(rig, duty, 0));
        Assert.Contains("PumpDuty", error.Message, StringComparison.Ordinal);
        Assert.Empty(_driver.Deeds);
    }

    [Fact]
    public void Ctor_LineThatStaysAnInput_IsAFaultThatNamesIt()
    {
        _driver.StubbornPins.Add(Blower);

        RigFaultException error = Assert.Throws<RigFaultException>(() => Make());
        Assert.Contains("blower's line 27", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(17, 17, "BlowerPin is 17")]
    [InlineData(-1, 27, "PumpPin is -1")]
    [InlineData(17, -2, "BlowerPin is -2")]
    public void Ctor_LinesThatCannotBe_AreRefusedByName(int pump, int blower, string words)
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => Make(pump, blower));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
        Assert.Empty(_driver.Deeds);
    }

    [Fact]
    public async Task Ctor_NoBlower_LeavesItsLineAlone()
    {
        await using GpioRig rig = Make(Pump, null);
        await Apply(rig, 1, 1);

        Assert.DoesNotContain(_driver.Deeds, deed => deed.Contains($" {Blower}", StringComparison.Ordinal));
    }

    private static Task Apply(GpioRig rig, double pump, double blower) =>
        rig.ApplyAsync(new Outputs(pump, 0, blower, false), CancellationToken.None).AsTask();

    private GpioRig Make(int? pump = Pump, int? blower = Blower, bool activeLow = false)
    {
        RigSettings settings = new()
        {
            Simulated = false,
            Probes = [],
            Hardware = new HardwareSettings { PumpPin = pump, BlowerPin = blower, ActiveLow = activeLow },
        };
        return new GpioRig(new GpioController(_driver), settings, default, _time, _reports.Add);
    }
}
