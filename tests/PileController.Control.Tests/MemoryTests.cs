using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests;

public sealed class MemoryTests
{
    [Fact]
    public void AfterRestart_WhileDrawing_StandsAndPrimesBeforeItDrawsAgain()
    {
        Bench bench = new(new ControlSettings { BlowerFitted = false });
        bench.RunUntil(d => d.Mode == Mode.Drawing);
        bench.Memory = bench.Memory.AfterRestart();
        Assert.Equal(Mode.Standby, bench.Memory.Mode);
        Assert.Equal(Outputs.Safe, bench.Memory.Outputs);
        List<Mode> modes = [];
        bench.RunUntil(d =>
        {
            modes.Add(d.Mode);
            return d.Mode == Mode.Drawing;
        });

        Assert.Equal([Mode.Standby, Mode.Priming, Mode.Drawing], modes.Distinct());
    }

    [Fact]
    public void AfterRestart_HeldByHand_HoldsNothing()
    {
        Bench bench = new();
        bench.Tick(new TakeByHand(Actuator.Pump, 1, 3_600_000, "Ada"));
        bench.Memory = bench.Memory.AfterRestart();

        Assert.Empty(bench.Memory.Hands);
        Assert.NotEqual(Mode.ByHand, bench.Tick().Mode);
    }

    [Fact]
    public void AfterRestart_Tripped_StaysTrippedAndRefusesToClearUntilTheCauseIsSeenGone()
    {
        Bench bench = new();
        bench.Readings = bench.Readings.With(Channel.Leak, 1);
        bench.RunUntil(d => d.Mode == Mode.Tripped);
        bench.Memory = bench.Memory.AfterRestart();
        Assert.Equal(Mode.Tripped, bench.Memory.Mode);
        Decision first = bench.Tick(new ClearTrip("leak"));

        Assert.Equal((Mode.Tripped, Outputs.Safe), (first.Mode, first.Outputs));
        Assert.StartsWith("Not cleared:", first.Note, StringComparison.Ordinal);
        bench.Readings = bench.Readings.With(Channel.Leak, 0);
        bench.Tick();
        Assert.Equal(Mode.Standby, bench.Tick(new ClearTrip("leak")).Mode);
    }

    [Fact]
    public void AfterRestart_Servicing_StaysLocked()
    {
        Bench bench = new();
        bench.Tick(new SetServicing(true));
        bench.Memory = bench.Memory.AfterRestart();

        Assert.Equal((Mode.Servicing, Outputs.Safe), (bench.Tick().Mode, bench.Last.Outputs));
    }

    [Fact]
    public void AfterRestart_Always_KeepsSequenceTotalsAndWhetherTheHeapHasLit()
    {
        Bench bench = new();
        bench.RunUntil(d => d.Mode == Mode.Drawing);
        bench.Run(600);
        Memory before = bench.Memory;
        Memory after = before.AfterRestart();

        Assert.True(before.Totals.WaterJoules > 0);
        Assert.Equal((before.Sequence, before.Totals, true), (after.Sequence, after.Totals, after.Estimator.Lit));
        Assert.Equal(-1, after.LastMonotonicMilliseconds);
    }

    [Fact]
    public void Json_RoundTripInTheMiddleOfARun_GoesOnToTheSameBits()
    {
        Bench bench = new();
        bench.RunUntil(d => d.Mode == Mode.Drawing);
        bench.Tick(new TakeByHand(Actuator.Backup, 1, 3_600_000, "Ada"));
        bench.Readings = bench.Readings.With(Channel.HeapMiddle, 20).With(Channel.Battery, 11.3);
        bench.Run(200);
        string written = JsonSerializer.Serialize(bench.Memory);
        Memory back = JsonSerializer.Deserialize<Memory>(written)!;
        Assert.Equal(written, JsonSerializer.Serialize(back));
        Memory memory = bench.Memory;
        for (int i = 1; i <= 200; i++)
        {
            Instant at = new(bench.Now + (i * 10_000), bench.Now + (i * 10_000), 60);
            RigReadings said = bench.Readings.With(Channel.Flow, i % 5).With(Channel.House, 4 + (i / 50.0));
            (Decision one, memory) = Controller.Step(bench.Settings, memory, said, [], at);
            (Decision two, back) = Controller.Step(bench.Settings, back, said, [], at);
            Assert.Equal(Bits.Of(one), Bits.Of(two));
        }
    }

    [Fact]
    public void Fresh_HasOneEntryForEachOfTheFirstProbesAndRows()
    {
        Assert.Equal(ChannelTable.FirstCount, Memory.Fresh.Probes.Length);
        Assert.Equal(InterlockTable.FirstCount, Memory.Fresh.Interlocks.Length);
    }
}
