using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests;

public sealed class ControllerTests
{
    private static readonly TakeByHand Pump = new(Actuator.Pump, 0.6, 600_000, "Ada");

    [Fact]
    public void Step_ColdHouseAndWarmHeap_PrimesThenDraws()
    {
        Bench bench = new();
        bench.RunUntil(d => d.Mode == Mode.Priming);
        Assert.True(bench.Last.Outputs is { PumpDuty: > 0.3 and <= 0.5, ValveOpening: 1 });
        long began = bench.Now;
        bench.RunUntil(d => d.Mode == Mode.Drawing);

        Assert.True(bench.Now - began >= bench.Settings.PrimeSeconds * 1000);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(10)]
    [InlineData(60)]
    public void Step_AnyTickLength_ComesToDraw(double tickSeconds)
    {
        Bench bench = new(new ControlSettings { TickSeconds = tickSeconds });

        Assert.Equal(Mode.Drawing, bench.RunUntil(d => d.Mode == Mode.Drawing).Mode);
    }

    [Fact]
    public void Step_FoulHouseAir_HoldsTheBlowerUntilItIsAired()
    {
        Bench bench = new();
        bench.Readings = bench.Readings.With(Channel.CarbonDioxide, 900);
        bench.RunUntil(d => d.Outputs.BlowerDuty > 0);
        bench.Readings = bench.Readings.With(Channel.CarbonDioxide, 5200);
        bench.Run(290);
        Assert.True(bench.Last.Outputs.BlowerDuty > 0);
        bench.Run(30);
        Assert.Equal((0, 0), (bench.Last.Outputs.BlowerDuty, bench.Last.AirGrantWatts));
        Assert.Contains("Do not go in.", bench.Last.Why, StringComparison.Ordinal);
        bench.Readings = bench.Readings.With(Channel.CarbonDioxide, 4600);
        Assert.Equal(0, bench.Run(3600).AirGrantWatts);
        bench.Readings = bench.Readings.With(Channel.CarbonDioxide, 4400);

        Assert.True(bench.Run(20).AirGrantWatts > 0);
    }

    // The same bits but for what is said of the probes themselves.
    [Fact]
    public void Step_ChannelsWithoutAPartInControl_ChangeNothingThatIsDecided()
    {
        Bench bare = new();
        Bench full = new();
        Random random = new(5);
        for (int tick = 0; tick < 1000; tick++)
        {
            full.Readings = bare.Readings.With(Channel.Humidity, random.Next(100)).With(Channel.CarbonDioxide, random.Next(400, 4000))
                .With(Channel.SpareOne, random.Next(-60, 120)).With(Channel.SpareFour, random.Next(-60, 120))
                .With(Channel.SpareTwo, Reading.FromValue(Channel.SpareTwo, 20, ReadingQuality.NoAnswer));
            Decision one = bare.Tick();
            Decision other = full.Tick();
            Assert.Equal(Decided(one), Decided(other));
            Assert.Equal(
                JsonSerializer.Serialize(bare.Memory with { Probes = [], ToldDoubtedProbes = 0, ToldProbesAtMonotonicMilliseconds = 0 }),
                JsonSerializer.Serialize(full.Memory with { Probes = [], ToldDoubtedProbes = 0, ToldProbesAtMonotonicMilliseconds = 0 }));
        }

        static string Decided(Decision decision) =>
            JsonSerializer.Serialize(decision with { Readings = RigReadings.None, Kinds = decision.Kinds & ~DecisionKinds.Probe });
    }

    [Fact]
    public void Step_FlowCountedBeforeThePumpRan_ProvesNothing()
    {
        Bench bench = new();
        bench.Readings = bench.Readings.Without(Channel.PumpPower);
        bench.Run(600);
        bench.Memory = bench.Memory with { Mode = Mode.Standby, Outputs = Outputs.Safe, FlowSinceMonotonicMilliseconds = -1 };
        RigReadings noise = Sound.Readings.With(Channel.Flow, 2);
        (_, Memory after) = Controller.Step(bench.Settings, bench.Memory, noise, [], new Instant(bench.Now, bench.Now + 10_000, 0));

        Assert.Equal(-1, after.FlowSinceMonotonicMilliseconds);
    }

    [Fact]
    public void Step_NoFlowWhilePumping_TripsInTimeAndStops()
    {
        Bench bench = new() { WaterMoves = false };
        bench.RunUntil(d => d.Outputs.PumpDuty > 0);
        long began = bench.Now;
        bench.RunUntil(d => d.Mode == Mode.Tripped);

        Assert.Equal(Outputs.Safe, bench.Last.Outputs);
        Assert.True(bench.Now - began <= bench.Settings.Limits.NoFlowGraceSeconds * 1000);
        Assert.True(bench.Last.Kinds.HasFlag(DecisionKinds.Trip));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Step_FlowStopsInARun_IsSafeWithinTwentySecondsOfTheLastReadingThatShowedFlow(bool metered)
    {
        Bench bench = new();
        bench.Readings = metered ? bench.Readings : bench.Readings.Without(Channel.Flow);
        bench.RunUntil(d => d.Outputs.PumpDuty > 0);
        Assert.True(bench.Run(120).Outputs.PumpDuty > 0);
        long flowed = bench.Now;
        bench.WaterMoves = false;
        bench.PumpTakesPower = metered;
        bench.RunUntil(d => d.Mode == Mode.Tripped);

        Assert.Equal(Outputs.Safe, bench.Last.Outputs);
        Assert.Equal(20_000, bench.Now - flowed);
    }

    [Fact]
    public void Step_ABubbleEmptiesOneReading_DrawsOn()
    {
        Bench bench = new();
        bench.RunUntil(d => d.Outputs.PumpDuty > 0);
        bench.Run(120);
        for (int i = 0; i < 20; i++)
        {
            bench.WaterMoves = i % 2 == 1;
            bench.Tick();
        }

        Assert.NotEqual(Mode.Tripped, bench.Last.Mode);
        Assert.True(bench.Last.Outputs.PumpDuty > 0);
    }

    [Fact]
    public void Step_TripByALeak_OutranksAHandAndIsClearedOnceDry()
    {
        Bench bench = new();
        Assert.Equal(0.6, bench.Tick(Pump with { Milliseconds = 3_600_000 }).Outputs.PumpDuty);
        bench.Readings = bench.Readings.With(Channel.Leak, 1);
        bench.RunUntil(d => d.Mode == Mode.Tripped);
        Assert.Equal(Outputs.Safe, bench.Tick(Pump).Outputs);
        Assert.StartsWith("Not cleared:", bench.Tick(new ClearTrip("leak")).Note, StringComparison.Ordinal);
        bench.Readings = bench.Readings.With(Channel.Leak, 0);
        Assert.Equal(Mode.Tripped, bench.Tick().Mode);

        Assert.Equal(Mode.Standby, bench.Tick(new ClearTrip("leak")).Mode);

        // What was held when it tripped does not start again by itself.
        Assert.NotEqual(Mode.ByHand, bench.Tick().Mode);
        Assert.Empty(bench.Last.Hands);
    }

    [Fact]
    public void Step_ProbeThatFlickers_GetsALineNowAndThen()
    {
        Bench bench = new();
        bench.Run(600);
        RigReadings good = bench.Readings;
        int lines = 0;
        for (int i = 0; i < 90; i++)
        {
            bench.Readings = i % 3 == 0 ? good.With(Channel.HeapEdge, new Reading(0, ReadingQuality.NoAnswer, 0)) : good;
            lines += (bench.Tick().Kinds & DecisionKinds.Probe) != 0 ? 1 : 0;
        }

        Assert.InRange(lines, 1, 4);
    }

    [Fact]
    public void Step_TakenByHand_EndsByItselfAndTheMeansRuleGoesOn()
    {
        Bench bench = new();
        bench.Tick(Pump);
        Assert.Equal(Mode.ByHand, bench.Last.Mode);
        bench.Run(590);
        Assert.Equal(Mode.ByHand, bench.Last.Mode);
        bench.Tick();

        Assert.Equal(Mode.Standby, bench.Last.Mode);
        Assert.Equal("By hand ended by itself: pump.", bench.Last.Note);
        Assert.Equal(Mode.Drawing, bench.RunUntil(d => d.Mode == Mode.Drawing).Mode);
    }

    [Fact]
    public void Step_PumpByHand_OpensTheValveUnlessThatIsHeldToo()
    {
        Bench bench = new();
        Assert.Equal(1, bench.Tick(Pump).Outputs.ValveOpening);

        Assert.Equal(0.2, bench.Tick(new TakeByHand(Actuator.Valve, 0.2, 60_000, "Ada")).Outputs.ValveOpening);
    }

    [Fact]
    public void Step_PumpByHandIntoABlockedLine_Trips()
    {
        Bench bench = new() { WaterMoves = false };
        bench.Tick(Pump);

        Assert.Equal(Outputs.Safe, bench.RunUntil(d => d.Mode == Mode.Tripped, 90).Outputs);
    }

    [Fact]
    public void Step_Servicing_LocksOutputsOffEvenInFrostAndByHand()
    {
        Bench bench = new() { Memory = Memory.Fresh };
        bench.Readings = bench.Readings.With(Channel.Supply, 0).With(Channel.Return, 0);
        bench.Run(60);
        Assert.Equal(Mode.FrostGuard, bench.Last.Mode);
        Assert.Equal(Outputs.Safe, bench.Tick(new SetServicing(true), Pump).Outputs);
        bench.Run(60);

        Assert.Equal((Mode.Servicing, Outputs.Safe), (bench.Last.Mode, bench.Last.Outputs));
    }

    [Fact]
    public void Step_TripClearedDuringServicing_NeverMovesAnything()
    {
        Bench bench = new();
        bench.Readings = bench.Readings.With(Channel.Supply, 0).With(Channel.Return, 0).With(Channel.Leak, 1);
        bench.RunUntil(d => d.Mode == Mode.Tripped);
        bench.Tick(new SetServicing(true));
        bench.Readings = bench.Readings.With(Channel.Leak, 0);
        bench.Tick();

        Assert.Equal(Outputs.Safe, bench.Tick(new ClearTrip("leak")).Outputs);
        Assert.Equal((Mode.Servicing, Outputs.Safe), (bench.Tick().Mode, bench.Last.Outputs));
    }

    [Fact]
    public void Step_LinesNearFrost_MovesWaterBeforeTheHeapHasLitAndEndsWhenWarm()
    {
        Bench bench = new() { Memory = Memory.Fresh };
        bench.Readings = bench.Readings.With(Channel.Supply, 1).With(Channel.Return, 1);
        bench.RunUntil(d => d.Mode == Mode.FrostGuard, 60);
        Assert.True(bench.Last.Outputs is { PumpDuty: 0.4, ValveOpening: 1 });
        bench.Readings = bench.Readings.With(Channel.Supply, 12).With(Channel.Return, 9);
        bench.RunUntil(d => d.Mode == Mode.Standby, 120);

        Assert.Equal(0, bench.Last.Outputs.PumpDuty);
    }

    [Theory]
    [InlineData(60, 12.8, true)]
    [InlineData(40, 12.8, false)]
    [InlineData(60, 11, false)]
    public void Step_LinesThatNobodySees_MovesWaterWhileHeapAndBatteryBearItAndNotForLong(double heapC, double battery, bool bears)
    {
        Bench bench = new() { Memory = Memory.Fresh };
        bench.Readings = bench.Readings.Without(Channel.Supply, Channel.Return, Channel.Outside)
            .With(Channel.HeapCore, heapC).With(Channel.HeapMiddle, heapC).With(Channel.HeapTurns, heapC).With(Channel.Battery, battery);
        bench.Run(120);
        Assert.Equal(bears ? (Mode.FrostGuard, 0.4) : (Mode.Standby, 0), (bench.Last.Mode, bench.Last.Outputs.PumpDuty));
        bench.Run(600);

        Assert.Equal((Mode.Standby, 0.0), (bench.Last.Mode, bench.Last.Outputs.PumpDuty));
    }

    [Fact]
    public void Step_FrostGuardOverAnEndedHold_BeginsNoDrawOfAnUnlitHeap()
    {
        Bench bench = new() { Memory = Memory.Fresh };
        bench.Readings = bench.Readings.With(Channel.Supply, 1).With(Channel.Return, 1);
        bench.Tick(Pump with { Actuator = Actuator.Valve, Value = 1 });
        bench.Run(60);
        Assert.Equal(0.4, bench.Tick(new ReleaseHand(null)).Outputs.PumpDuty);
        Assert.Equal(Mode.Standby, bench.Last.Mode);
        bench.Readings = bench.Readings.With(Channel.Supply, 12).With(Channel.Return, 9);

        Assert.Equal((Mode.Standby, 0.0), (bench.Tick().Mode, bench.Last.Outputs.PumpDuty));
    }

    [Fact]
    public void Step_HeapAtItsFloor_RecoversAndDrawsAgainWhenWarm()
    {
        Bench bench = new() { Readings = Heap(40) };
        Assert.Equal(Mode.Recovering, bench.Run(60).Mode);
        bench.Readings = Heap(60);

        Assert.Equal(Mode.Drawing, bench.RunUntil(d => d.Mode == Mode.Drawing, 86_400).Mode);
    }

    [Fact]
    public void Step_HeapThatCoolsByItself_DoesNotSwingBetweenModes()
    {
        // A heap that is burnt out in bitter cold: by its warmth it has recovered, by what it will come to at rest it bears no draw.
        Bench bench = new() { Readings = Heap(52).With(Channel.Outside, -25) };
        bench.Tick();
        EstimatorMemory estimator = bench.Memory.Estimator;
        double[] mean = [.. estimator.Belief!.Mean];
        mean[HeapBelief.FirstFigure] = -5;
        bench.Memory = bench.Memory with
        {
            Mode = Mode.Standby,
            Estimator = estimator with { Started = false, Belief = estimator.Belief with { Mean = mean } },
        };
        int changes = 0;
        for (int i = 0; i < 100; i++)
        {
            Decision decision = bench.Tick();
            Assert.Equal(0, decision.MeansWatts);
            changes += decision.Mode != decision.ModeBefore ? 1 : 0;
        }

        Assert.True(bench.Last.Estimate.ActiveZoneCelsius > 45 + 3.5 + (1.6449 * bench.Last.Estimate.UncertaintyKelvin));
        Assert.Equal(Mode.Recovering, bench.Last.Mode);
        Assert.Equal(1, changes);
    }

    [Fact]
    public void Step_AllHeapProbesGone_HoldsTheDrawAfterTenMinutesAndResumes()
    {
        Bench bench = new();
        bench.RunUntil(d => d.Mode == Mode.Drawing);
        RigReadings sound = bench.Readings;
        bench.Readings = sound.Without(Channel.HeapCore, Channel.HeapMiddle, Channel.HeapTurns, Channel.HeapEdge);
        bench.Run(620);
        Assert.Equal((0, Curb.Interlock), (bench.Last.Outputs.PumpDuty, bench.Last.Curb));
        bench.Readings = sound;

        Assert.Equal(Mode.Drawing, bench.RunUntil(d => d.Mode == Mode.Drawing).Mode);
    }

    [Fact]
    public void Step_OneHeapProbe_GivesAgainstFrostOnly()
    {
        Bench bench = new();
        bench.Readings = bench.Readings.Without(Channel.HeapMiddle, Channel.HeapTurns, Channel.HeapEdge).With(Channel.House, 9)
            .With(Channel.Outside, 6);

        Assert.Equal((0, Curb.Probes), (bench.Run(60).GrantWatts, bench.Last.Curb));
    }

    [Fact]
    public void Step_BatteryEmpty_StopsTheDrawAndNotTheFrostGuard()
    {
        Bench bench = new();
        bench.RunUntil(d => d.Mode == Mode.Drawing);
        bench.Readings = bench.Readings.With(Channel.Battery, 11);
        bench.Run(90);
        Assert.Equal((0, Curb.Power), (bench.Last.Outputs.PumpDuty, bench.Last.Curb));
        bench.Readings = bench.Readings.With(Channel.Supply, 1).With(Channel.Return, 1);

        Assert.Equal(0.4, bench.RunUntil(d => d.Mode == Mode.FrostGuard, 120).Outputs.PumpDuty);
    }

    [Fact]
    public void Step_LineNearFreezingInALoopThatLiftsItsWater_TheGuardRunsThePumpHardEnoughToMoveIt()
    {
        Bench bench = new(new ControlSettings { MovingDuty = 0.62 }) { Memory = Memory.Fresh };
        bench.Readings = bench.Readings.With(Channel.Supply, 1).With(Channel.Return, 1);

        Assert.Equal(0.62, bench.RunUntil(d => d.Mode == Mode.FrostGuard, 120).Outputs.PumpDuty);
    }

    [Fact]
    public void Step_FirstTick_SaysStartAndAddsNothingUp()
    {
        Decision decision = new Bench().Tick();

        Assert.True(decision.Kinds.HasFlag(DecisionKinds.Start));
        Assert.Equal(default, decision.Totals);
        Assert.Equal(InterlockTable.All.Count, decision.Verdicts.Length);
    }

    [Fact]
    public void Step_HoursWithoutATick_CountsTwoMinutesAtMost()
    {
        Bench bench = new();
        bench.RunUntil(d => d.Mode == Mode.Drawing);
        bench.Run(60);
        double before = bench.Last.Totals.Litres;
        double flow = bench.TickAfter(6 * 3600).Draw.FlowLitresPerMinute;

        Assert.Equal(flow * 2, bench.Last.Totals.Litres - before, 1e-9);
    }

    private static RigReadings Heap(double celsius) => Sound.Readings.With(Channel.HeapCore, celsius)
        .With(Channel.HeapMiddle, celsius).With(Channel.HeapTurns, celsius).With(Channel.HeapEdge, celsius - 8);
}
