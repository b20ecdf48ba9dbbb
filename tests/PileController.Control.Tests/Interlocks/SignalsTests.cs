using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Interlocks;

public sealed class SignalsTests
{
    private static readonly Outputs Running = new(0.5, 1, 0, false);

    [Theory]
    [InlineData(0.39, 1)]
    [InlineData(0.41, 0)]
    public void Fill_PumpRuns_NoFlowIsByTheMeter(double flow, double expected) =>
        Assert.Equal(expected, Of(Signal.NoFlow, Sound.Readings.With(Channel.Flow, flow), Running));

    [Theory]
    [InlineData(0.25, 1)]
    [InlineData(6, 0)]
    public void Fill_NoFlowMeter_PowerStandsInForIt(double watts, double expected) =>
        Assert.Equal(expected, Of(Signal.NoFlow, Sound.Readings.Without(Channel.Flow).With(Channel.PumpPower, watts), Running));

    [Fact]
    public void Fill_NothingToProveFlow_IsUnknown() =>
        Assert.True(double.IsNaN(Of(Signal.NoFlow, Sound.Readings.Without(Channel.Flow, Channel.PumpPower), Running)));

    [Fact]
    public void Fill_PumpStands_AsksForNoFlow()
    {
        Assert.Equal(0, Of(Signal.NoFlow, Sound.Readings, default));
        Assert.Equal(0, Of(Signal.PumpSilent, Sound.Readings, default));
        Assert.Equal(1, Of(Signal.FlowWhileOff, Sound.Readings.With(Channel.Flow, 1), default));
    }

    [Fact]
    public void Fill_FrostyAir_TakesTheColderLineAndElseTheAir()
    {
        RigReadings cold = Sound.Readings.With(Channel.Supply, 8).With(Channel.Return, 3);

        Assert.Equal(3, Of(Signal.ColdestLine, cold, default));
        Assert.Equal(8, Of(Signal.ColdestLine, cold.Without(Channel.Return), default));
        Assert.Equal(-5, Of(Signal.ColdestLine, cold.Without(Channel.Return, Channel.Supply), default));
        Assert.True(double.IsNaN(Of(Signal.ColdestLine, cold.Without(Channel.Return, Channel.Supply, Channel.Outside), default)));
    }

    [Fact]
    public void Fill_MildAir_FreezesNoLine() => Assert.Equal(
        double.PositiveInfinity, Of(Signal.ColdestLine, Sound.Readings.With(Channel.Outside, 1).With(Channel.Return, 1), default));

    [Theory]
    [InlineData(ReadingQuality.OutOfRange)]
    [InlineData(ReadingQuality.Disagrees)]
    public void Fill_HotterProbeInDoubt_StillCountsForTheFireWatch(ReadingQuality quality)
    {
        RigReadings burning = Sound.Readings.With(Channel.HeapCore, Reading.FromValue(Channel.HeapCore, 110, quality));

        Assert.Equal(110, Of(Signal.HottestHeap, burning, default));
    }

    [Theory]
    [InlineData(ReadingQuality.PowerOnValue)]
    [InlineData(ReadingQuality.TooFast)]
    [InlineData(ReadingQuality.NoAnswer)]
    public void Fill_ProbeThatSaysNothing_IsNoFire(ReadingQuality quality)
    {
        RigReadings readings = Sound.Readings.With(Channel.HeapCore, Reading.FromValue(Channel.HeapCore, 85, quality));

        Assert.Equal(58, Of(Signal.HottestHeap, readings, default));
    }

    [Fact]
    public void Fill_OnlyTheEdgeLeft_IsBlind() => Assert.Equal(
        1, Of(Signal.HeapBlind, Sound.Readings.Without(Channel.HeapCore, Channel.HeapMiddle, Channel.HeapTurns), default));

    [Fact]
    public void Fill_SwitchesNotFitted_AreSound()
    {
        RigReadings bare = Sound.Readings.Without(Channel.Leak, Channel.Level);

        Assert.Equal(0, Of(Signal.Leak, bare, default));
        Assert.Equal(0, Of(Signal.LevelMissing, bare, default));
    }

    [Fact]
    public void Fill_CarbonDioxide_IsNoneWithoutAProbeAndUnknownWhereItIsNotBelieved()
    {
        RigReadings foul = Sound.Readings.With(Channel.CarbonDioxide, 6000);

        Assert.Equal(double.NegativeInfinity, Of(Signal.CarbonDioxide, Sound.Readings, default));
        Assert.Equal(6000, Of(Signal.CarbonDioxide, foul, default));
        Assert.True(double.IsNaN(Of(Signal.CarbonDioxide, foul.Doubted(Channel.CarbonDioxide, ReadingQuality.NoAnswer), default)));
    }

    [Fact]
    public void Fill_ShellReports_AreTakenInSeconds()
    {
        ReportTick report = new(true, -7000, 12_000);

        Assert.Equal(1, Of(Signal.StoreFailing, Sound.Readings, default, report));
        Assert.Equal(7, Of(Signal.ClockJump, Sound.Readings, default, report));
        Assert.Equal(12, Of(Signal.TickLate, Sound.Readings, default, report));
        Assert.Equal(6, Of(Signal.Restarts, Sound.Readings, default, report with { Restarts = 6 }));
    }

    private static double Of(Signal signal, RigReadings readings, Outputs running, ReportTick? report = null)
    {
        double[] signals = new double[Signals.Count];
        Signals.Fill(signals, new ControlSettings(), readings, running, 55, report);
        return signals[(int)signal];
    }
}
