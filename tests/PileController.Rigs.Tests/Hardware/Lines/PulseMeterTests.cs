using System.Device.Gpio;
using Microsoft.Extensions.Time.Testing;
using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Lines;

namespace PileController.Rigs.Tests.Hardware.Lines;

public sealed class PulseMeterTests : IDisposable
{
    private const int Line = 5;

    private readonly FakeLines _lines = new();
    private readonly FakeTimeProvider _time = new();
    private readonly List<string> _reports = [];
    private readonly GpioController _controller;
    private readonly FakeWheel _wheel;

    public PulseMeterTests()
    {
        _controller = new GpioController(_lines);
        _wheel = new FakeWheel(_lines, Line, _time);
        _lines.Set(Line, true);
    }

    public void Dispose() => _controller.Dispose();

    [Theory]
    [InlineData(0.7)]
    [InlineData(4)]
    [InlineData(7.3)]
    [InlineData(10)]
    [InlineData(28.5)]
    [InlineData(50)]
    [InlineData(59.9)]
    [InlineData(60)]
    public void Look_OverAThousandPulses_IsWithinHalfAPercent(double perSecond)
    {
        using PulseMeter meter = Make();
        List<double> rates = [];
        for (int tick = 0; tick * 10 * perSecond < 1050; tick++)
        {
            _wheel.Turn(10, perSecond);
            rates.Add(meter.Look()!.PerSecond);
        }

        Assert.InRange(rates.Average(), perSecond * 0.995, perSecond * 1.005);
        Assert.Empty(_reports);
    }

    [Fact]
    public void Look_AtRest_IsExactlyNought()
    {
        using PulseMeter meter = Make();
        _wheel.Turn(20, 30);
        meter.Look();
        _wheel.Turn(2, 0);
        meter.Look();
        for (int tick = 0; tick < 12; tick++)
        {
            _wheel.Turn(10, 0);
            Assert.Equal(0, meter.Look()!.PerSecond);
        }

        Assert.Empty(_reports);
    }

    [Fact]
    public void Look_PumpThatRunsForPartOfTheTicks_LosesNoWater()
    {
        using PulseMeter meter = Make();
        double sum = 0;
        for (int tick = 0; tick < 60; tick++)
        {
            // Six seconds in twenty: the duty's period is longer than the tick.
            _wheel.Turn(6, tick % 2 == 0 ? 30 : 0);
            _wheel.Turn(4, 0);
            sum += meter.Look()!.PerSecond * 10;
        }

        Assert.Equal(_wheel.Pulses, sum, _wheel.Pulses * 0.01);
    }

    [Fact]
    public void Look_BeforeTheFirstSecond_TellsNothing()
    {
        using PulseMeter meter = Make();
        _wheel.Turn(0.5, 30);

        Assert.Null(meter.Look());
    }

    [Fact]
    public void Look_TwiceWithinASecond_GivesTheSame()
    {
        using PulseMeter meter = Make();
        _wheel.Turn(5.1, 30);

        Assert.Equal(meter.Look(), meter.Look());
    }

    [Fact]
    public void Look_LineBounces_IsHeldToTheMostAndSaysSo()
    {
        using PulseMeter meter = Make(most: 50);
        _wheel.Turn(10, 45);
        Assert.False(meter.Look()!.Bounced);
        _wheel.Turn(10, 400);
        PulseRate bounced = meter.Look()!;
        Assert.True(bounced.Bounced);
        Assert.InRange(bounced.PerSecond, 50, 52);
        _wheel.Turn(10, 45);
        meter.Look();
        _wheel.Turn(10, 45);

        Assert.False(meter.Look()!.Bounced);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(10)]
    [InlineData(20)]
    [InlineData(30)]
    [InlineData(50)]
    [InlineData(60)]
    public void OnLook_WatcherDies_IsNoticedWithinHalfAMinuteAndTheLineOpenedAgain(double perSecond)
    {
        using PulseMeter meter = Make();
        _wheel.Turn(10, perSecond);
        _lines.Deaf.Add(Line);
        double seconds = 0;
        for (; _lines.Opened[Line] == 1; seconds += 0.25)
        {
            Assert.True(seconds < 30, "not noticed within 30 s");
            _wheel.Turn(0.25, perSecond);
        }

        _wheel.Turn(10, perSecond);
        meter.Look();
        _wheel.Turn(20, perSecond);
        Assert.Equal(perSecond, meter.Look()!.PerSecond, 0.06);
        Assert.Equal(
            ["The pulses of flow on line 5 cannot be counted: pulses come and are not counted; it is opened again.", "The pulses of flow on line 5 are counted again."],
            _reports);
    }

    [Fact]
    public void OnLook_WatcherDiesAndTheLineCannotBeOpened_TellsNothingUntilItCan()
    {
        using PulseMeter meter = Make();
        _wheel.Turn(10, 30);
        _lines.Deaf.Add(Line);
        _lines.Broken.Add(Line);
        for (int tick = 0; tick < 3; tick++)
        {
            _wheel.Turn(10, 30);
            Assert.Null(meter.Look());
        }

        _lines.Broken.Clear();
        _wheel.Turn(10, 30);

        Assert.Equal(30, meter.Look()!.PerSecond, 0.2);
        Assert.Equal(2, _reports.Count);
    }

    [Fact]
    public void OnLook_WheelStopsWhileTheWatcherIsDead_IsAGoodNoughtSoonAfter()
    {
        using PulseMeter meter = Make();
        _wheel.Turn(10, 30);
        _lines.Deaf.Add(Line);
        _lines.Broken.Add(Line);
        _wheel.Turn(10, 30);
        _lines.Broken.Clear();
        _wheel.Turn(10, 0);

        Assert.Equal(0, meter.Look()!.PerSecond);
    }

    [Fact]
    public void OnLook_FlowThatStops_IsNotTakenForADeadWatcher()
    {
        // Pump on, line blocked: the interlock lives on this nought being believed.
        using PulseMeter meter = Make();
        _wheel.Turn(10, 30);
        _wheel.Turn(300, 0);

        Assert.Equal(1, _lines.Opened[Line]);
        Assert.NotNull(meter.Look());
    }

    [Fact]
    public void Dispose_Twice_StopsListening()
    {
        PulseMeter meter = Make();
        Assert.True(_lines.IsListened(Line));
        meter.Dispose();
        meter.Dispose();

        Assert.False(_lines.IsListened(Line));
        _wheel.Turn(5, 30);
    }

    [Fact]
    public void Ctor_LineThatStaysAnOutput_IsAFaultThatNamesIt()
    {
        _lines.Stubborn.Add(Line);

        RigFaultException error = Assert.Throws<RigFaultException>(() => Make());
        Assert.Contains("line 5 of flow", error.Message, StringComparison.Ordinal);
    }

    private PulseMeter Make(double most = 200) => new(_controller, "flow", Line, most, _time, _reports.Add);
}
