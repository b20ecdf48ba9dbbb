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
        HeapProfile profile = HeapProfile.From(Settings.Places, Sound.Readings, -5);
        HeapEstimate estimate = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, 0, 0, At(0)).Estimate;

        Assert.Equal(profile.ActiveZoneC, estimate.ActiveZoneCelsius, 1e-9);
        Assert.Equal(2, estimate.UncertaintyKelvin, 1e-9);
        Assert.True(estimate.Trusted);
        Assert.False(estimate.Lit);
    }

    [Fact]
    public void Step_HeapHasCooled_FollowsWithinHalfADayAndLearnsTheNetHeat()
    {
        RigReadings cooler = HeapProbes.Aggregate(Sound.Readings, (r, c) => r.With(c, r[c].ValueOf(c) - 6));
        EstimatorMemory memory = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, 0, 0, At(0)).Memory;
        HeapEstimate estimate = default;
        for (int i = 1; i <= 12 * 60; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, cooler, 0, 60, At(i));
        }

        Assert.Equal(HeapProfile.From(Settings.Places, cooler, -5).ActiveZoneC, estimate.ActiveZoneCelsius, 0.6);
        Assert.True(estimate.GenerationWatts < -50, $"{estimate.GenerationWatts} W");
    }

    [Fact]
    public void Step_DrawThatTheProbesBearOut_IsMadeUpForByNetHeat()
    {
        EstimatorMemory memory = EstimatorMemory.Fresh;
        HeapEstimate estimate = default;
        for (int i = 0; i <= 6 * 1440; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, Sound.Readings, 1000, i == 0 ? 0 : 60, At(i));
        }

        // A heap that stands still while 1 kW is drawn makes 1 kW more than it loses.
        Assert.Equal(1000, estimate.GenerationWatts, 60.0);
        Assert.Equal(0, estimate.TrendKelvinPerDay, 0.4);
    }

    [Theory]
    [InlineData(Channel.HeapCore)]
    [InlineData(Channel.HeapMiddle)]
    [InlineData(Channel.HeapTurns)]
    [InlineData(Channel.HeapEdge)]
    public void Step_OneProbeGone_GoesOnTrusted(Channel gone)
    {
        EstimatorMemory memory = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, 0, 0, At(0)).Memory;
        double before = memory.ActiveZoneC;
        HeapEstimate estimate = default;
        for (int i = 1; i <= 24 * 60; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, Sound.Readings.Without(gone), 0, 60, At(i));
        }

        Assert.True(estimate.Trusted);
        Assert.Equal(before, estimate.ActiveZoneCelsius, 3.0);
    }

    [Fact]
    public void Step_AllProbesGone_PredictsFromTheDrawAndGrowsUnsure()
    {
        EstimatorMemory memory = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, 0, 0, At(0)).Memory;
        (double zone, double sigma) = (memory.ActiveZoneC, Math.Sqrt(memory.VarianceK2));
        RigReadings blind = Sound.Readings.Without(HeapProbes);
        HeapEstimate estimate = default;
        for (int i = 1; i <= 1440; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, blind, 1000, 60, At(i));
        }

        // A day at 1 kW out of 0.65 × 26 MJ/K is 5.1 K.
        Assert.Equal(zone - (86.4e6 / (0.65 * 2.6e7)), estimate.ActiveZoneCelsius, 0.01);
        Assert.False(estimate.Trusted);
        Assert.True(estimate.UncertaintyKelvin > sigma + 0.5);
    }

    [Fact]
    public void Step_HotForADay_LightsThenAndNotBefore()
    {
        (HeapEstimate estimate, EstimatorMemory memory) = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, 0, 0, At(0));
        for (int i = 1; i < 1440; i++)
        {
            (estimate, memory) = Estimator.Step(Settings, memory, Sound.Readings, 0, 60, At(i));
            Assert.False(estimate.Lit);
        }

        Assert.True(Estimator.Step(Settings, memory, Sound.Readings, 0, 60, At(1440)).Estimate.Lit);
    }

    [Fact]
    public void Step_CoolAgainBeforeTheDayIsOver_BeginsTheDayAnew()
    {
        EstimatorMemory memory = EstimatorMemory.Fresh with
        {
            BodyC = 50,
            ActiveZoneC = 49.9,
            VarianceK2 = 1,
            Started = true,
            HotSinceMilliseconds = 0,
        };
        RigReadings cold = HeapProbes.Aggregate(Sound.Readings, (r, c) => r.With(c, 40));
        memory = Estimator.Step(Settings, memory, cold, 0, 60, At(1439)).Memory;

        Assert.Equal(-1, memory.HotSinceMilliseconds);
        Assert.False(Estimator.Step(Settings, memory, Sound.Readings, 0, 60, At(1500)).Estimate.Lit);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(-20, false)]
    public void Step_AfterARestart_HoldsTheOldEstimateOnlyIfTheProbesBearItOut(double change, bool held)
    {
        EstimatorMemory before = Estimator.Step(Settings, EstimatorMemory.Fresh, Sound.Readings, 0, 0, At(0)).Memory
            with
        { VarianceK2 = 0.4, NetW = 700, Lit = true };
        EstimatorMemory restarted = (Memory.Fresh with { Estimator = before }).AfterRestart().Estimator;
        RigReadings now = HeapProbes.Aggregate(Sound.Readings, (r, c) => r.With(c, r[c].ValueOf(c) + change));
        (HeapEstimate estimate, EstimatorMemory after) = Estimator.Step(Settings, restarted, now, 0, 0, At(0));

        Assert.Equal(HeapProfile.From(Settings.Places, now, -5).BodyC, after.BodyC, 1e-9);
        Assert.Equal(held ? 0.4 : 4, after.VarianceK2, 1e-9);
        Assert.True(estimate.Lit);
        Assert.Equal(700, estimate.GenerationWatts, 1e-9);
    }

    private static Instant At(int minute) => new(minute * 60_000L, minute * 60_000L, 0);
}
