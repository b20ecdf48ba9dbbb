using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Estimation;

public sealed class EstimatorTests
{
    private static readonly ControlSettings Settings = new();
    private static readonly Channel[] HeapProbes = [Channel.HeapCore, Channel.HeapMiddle, Channel.HeapTurns, Channel.HeapEdge];

    [Fact]
    public void Step_FirstReading_TakesTheProbesWord()
    {
        HeapEstimate estimate = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, default, 0, 0, At(0)).Estimate;

        Assert.Equal(Zone(Sound.Readings), estimate.ActiveZoneCelsius, 1.0);
        Assert.InRange(estimate.UncertaintyKelvin, 0.5, 2);
        Assert.Equal(60, estimate.CoreCelsius, 0.5);
        Assert.True(estimate.Trusted);
        Assert.False(estimate.Lit);
    }

    [Fact]
    public void Step_HeapHasCooledAtOnce_TakesTheProbesWordWithinADayAndIsUnsureTillThen()
    {
        RigReadings cooler = HeapProbes.Aggregate(Sound.Readings, (r, c) => r.With(c, r[c].ValueOf(c) - 15));
        EstimatorMemory memory = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, default, 0, 0, At(0)).Memory;
        HeapEstimate estimate = default;
        bool doubted = false;
        for (int i = 1; i <= 3 * 1440; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, i < 2 * 1440 ? Sound.Readings : cooler, default, 0, 60, At(i));
            doubted |= !estimate.Trusted;
        }

        Assert.Equal(Zone(cooler), estimate.ActiveZoneCelsius, 1.0);
        Assert.True(doubted);
        Assert.True(estimate.Trusted);
    }

    [Fact]
    public void Step_DrawThatTheProbesDoNotMiss_WasMade()
    {
        EstimatorMemory drawn = EstimatorMemory.Fresh;
        EstimatorMemory rested = EstimatorMemory.Fresh;
        HeapEstimate estimate = default;
        for (int i = 0; i <= 6 * 1440; i++)
        {
            (estimate, drawn) = Estimator.Step(Settings, drawn, Sound.Readings, Drawing(300), 0, i == 0 ? 0 : 60, At(i));
            rested = Estimator.Step(Settings, rested, Sound.Readings, default, 0, i == 0 ? 0 : 60, At(i)).Memory;
        }

        Assert.Equal(300, drawn.NetW - rested.NetW, 60.0);
        Assert.Equal(estimate.GenerationWatts, drawn.NetW, 1e-9);
    }

    [Theory]
    [InlineData(Channel.HeapCore)]
    [InlineData(Channel.HeapMiddle)]
    [InlineData(Channel.HeapTurns)]
    [InlineData(Channel.HeapEdge)]
    public void Step_OneProbeGone_GoesOnTrusted(Channel gone)
    {
        EstimatorMemory memory = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, default, 0, 0, At(0)).Memory;
        double before = memory.ActiveZoneC;
        HeapEstimate estimate = default;
        for (int i = 1; i <= 24 * 60; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, Sound.Readings.Without(gone), default, 0, 60, At(i));
        }

        Assert.True(estimate.Trusted);
        Assert.Equal(before, estimate.ActiveZoneCelsius, 3.0);
    }

    [Fact]
    public void Step_AllProbesGone_PredictsFromTheDrawAndGrowsUnsure()
    {
        EstimatorMemory memory = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, default, 0, 0, At(0)).Memory;
        (double zone, double sigma) = (memory.ActiveZoneC, Math.Sqrt(memory.VarianceK2));
        RigReadings blind = Sound.Readings.Without(HeapProbes);
        HeapEstimate drawn = default;
        HeapEstimate rested = default;
        EstimatorMemory other = memory;
        for (int i = 1; i <= 1440; i++)
        {
            (drawn, memory) = Estimator.Step(Settings, memory, blind, Drawing(1000), 0, 60, At(i));
            (rested, other) = Estimator.Step(Settings, other, blind, default, 0, 60, At(i));
        }

        // A day at 1 kW out of 27 MJ/K, drum included, is 3.2 K on the mean, at most twice that in the hottest half.
        Assert.InRange(rested.ActiveZoneCelsius - drawn.ActiveZoneCelsius, 1, 6.4);
        Assert.InRange(rested.ActiveZoneCelsius - zone, -4, 4);
        Assert.False(drawn.Trusted);
        Assert.True(drawn.UncertaintyKelvin > sigma);
    }

    [Fact]
    public void Step_HotForADay_LightsThenAndNotBefore()
    {
        (HeapEstimate estimate, EstimatorMemory memory) = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, default, 0, 0, At(0));
        for (int i = 1; i < 1440; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, Sound.Readings, default, 0, 60, At(i));
            Assert.False(estimate.Lit);
        }

        Assert.True(Estimator.Step(Settings, memory, Sound.Readings, default, 0, 60, At(1440)).Estimate.Lit);
    }

    [Fact]
    public void Step_CoolAgainBeforeTheDayIsOver_BeginsTheDayAnew()
    {
        EstimatorMemory memory = EstimatorMemory.Fresh with { ActiveZoneC = 60, HotSinceMilliseconds = 0 };
        RigReadings cold = HeapProbes.Aggregate(Sound.Readings, (r, c) => r.With(c, 40));
        memory = Estimator.Step(Settings, memory, cold, default, 0, 60, At(1439)).Memory;

        Assert.Equal(-1, memory.HotSinceMilliseconds);
        Assert.False(Estimator.Step(Settings, memory, Sound.Readings, default, 0, 60, At(1500)).Estimate.Lit);
    }

    [Fact]
    public void Step_BeliefOfAnOlderForm_BeginsAnewAndKeepsThatTheHeapHasLit()
    {
        EstimatorMemory old = EstimatorMemory.Fresh with { Lit = true, Started = true, Belief = new HeapBelief { Mean = [1, 2] } };
        (HeapEstimate estimate, EstimatorMemory after) = Estimator.Step(Settings, old, Sound.Readings, default, 0, 60, At(0));

        Assert.Equal(Zone(Sound.Readings), estimate.ActiveZoneCelsius, 1.0);
        Assert.True(estimate.Lit);
        Assert.True(after.Belief!.Fits);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(-20, false)]
    public void Step_AfterARestart_HoldsTheOldEstimateOnlyIfTheProbesBearItOut(double change, bool held)
    {
        EstimatorMemory before = EstimatorMemory.Fresh;
        for (int i = 0; i < 1440; i++)
        {
            before = Estimator.Step(Settings, before, Sound.Readings, default, 0, i == 0 ? 0 : 60, At(i)).Memory;
        }

        EstimatorMemory restarted = (Memory.Fresh with { Estimator = before with { Lit = true } }).AfterRestart().Estimator;
        RigReadings now = HeapProbes.Aggregate(Sound.Readings, (r, c) => r.With(c, r[c].ValueOf(c) + change));
        (HeapEstimate estimate, EstimatorMemory after) = Estimator.Step(Settings, restarted, now, default, 0, 0, At(0));

        double zone = held ? before.ActiveZoneC : Zone(now);
        Assert.Equal(zone, after.ActiveZoneC, held ? 1e-9 : 1.0);
        Assert.True(after.VarianceK2 > before.VarianceK2);
        Assert.True(estimate.Lit);
        Assert.Equal(before.NetW, estimate.GenerationWatts, 1e-9);
    }

    // What lines through the probes say of the hottest half.
    private static double Zone(RigReadings readings)
    {
        HeapShape shape = new(Settings);
        double[] t = new double[HeapShape.Nodes];
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            t[i] = ProbeLines.At(Settings.Places, readings, -5, shape.CentreM(i));
        }

        t[HeapShape.Sleeve] = t[shape.CoilRing];
        return HeapRings.ActiveZone(t, shape);
    }

    private static MeteredDraw Drawing(double watts) => new(watts, 0, 0, 0, false);

    private static Instant At(int minute) => new(minute * 60_000L, minute * 60_000L, 0);
}
