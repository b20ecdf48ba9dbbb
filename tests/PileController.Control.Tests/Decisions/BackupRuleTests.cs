using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Decisions;

public sealed class BackupRuleTests
{
    private static readonly ControlSettings Fitted = new() { BackupFitted = true };

    [Fact]
    public void Step_ColdHouseAndHeapAtItsFloor_BackupRunsInRecovering()
    {
        Bench bench = Cold(heap: 40);
        Decision decision = bench.Run(60);

        Assert.Equal(Mode.Recovering, decision.Mode);
        Assert.True(decision.Outputs.BackupOn);
        Assert.Contains("Backup heat is on.", decision.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Step_NotFitted_NeverRuns()
    {
        Bench bench = Cold(heap: 40);
        bench.Settings = new ControlSettings();

        Assert.False(bench.Run(60).Outputs.BackupOn);
    }

    [Fact]
    public void Step_HeapThatCovers_LeavesItOff()
    {
        Bench bench = Cold(heap: 64);
        bench.Readings = bench.Readings.With(Channel.House, 4.9).With(Channel.Outside, 4);

        Assert.False(bench.Run(60).Outputs.BackupOn);
    }

    [Theory]
    [InlineData(5.4, true)]
    [InlineData(5.6, false)]
    public void Step_HouseWarmsAgain_GoesOffHalfAKelvinAboveTheMinimum(double house, bool on)
    {
        Bench bench = Cold(heap: 40);
        bench.Run(60);
        bench.Readings = bench.Readings.With(Channel.House, house);

        Assert.Equal(on, bench.Run(60).Outputs.BackupOn);
    }

    [Fact]
    public void Step_HouseAboveItsMinimum_DoesNotComeOn()
    {
        Bench bench = Cold(heap: 40);
        bench.Readings = bench.Readings.With(Channel.House, 5.1);

        Assert.False(bench.Run(60).Outputs.BackupOn);
    }

    [Fact]
    public void Step_LinesNearFrost_BackupRunsInFrostGuard()
    {
        Bench bench = Cold(heap: 64);
        bench.Memory = Memory.Fresh;
        bench.Readings = bench.Readings.With(Channel.Supply, 1).With(Channel.Return, 1);
        Decision decision = bench.Run(120);

        Assert.Equal(Mode.FrostGuard, decision.Mode);
        Assert.True(decision.Outputs.BackupOn);
    }

    [Fact]
    public void Step_TrippedOrServicing_IsOff()
    {
        Bench bench = Cold(heap: 40);
        bench.Run(60);
        Assert.False(bench.Tick(new SetServicing(true)).Outputs.BackupOn);
        bench.Tick(new SetServicing(false));
        Assert.True(bench.Run(30).Outputs.BackupOn);
        bench.Readings = bench.Readings.With(Channel.Leak, 1);
        bench.RunUntil(d => d.Mode == Mode.Tripped);

        Assert.False(bench.Last.Outputs.BackupOn);
    }

    [Fact]
    public void Step_HouseProbeNotBelieved_IsOff()
    {
        Bench bench = Cold(heap: 40);
        bench.Run(60);
        bench.Readings = bench.Readings.Doubted(Channel.House, ReadingQuality.NoAnswer);

        Assert.False(bench.Tick().Outputs.BackupOn);
    }

    [Theory]
    [InlineData(1, 15, true)]
    [InlineData(0, -5, false)]
    [InlineData(1, 33, false)]
    public void Step_HeldByHand_DoesAsToldInAnyModeUnlessTheHouseIsTooWarm(double value, double house, bool on)
    {
        Bench bench = Cold(heap: 40);
        bench.Readings = bench.Readings.With(Channel.House, house);
        bench.Tick(new TakeByHand(Actuator.Backup, value, 3_600_000, "Ada"));
        Decision decision = bench.Run(120);

        Assert.NotEqual(Mode.ByHand, decision.Mode);
        Assert.Equal(on, decision.Outputs.BackupOn);
    }

    private static Bench Cold(double heap) => new(Fitted)
    {
        Readings = Sound.Readings.With(Channel.House, 2).With(Channel.HeapCore, heap).With(Channel.HeapMiddle, heap)
            .With(Channel.HeapTurns, heap).With(Channel.HeapEdge, heap - 10),
    };
}
