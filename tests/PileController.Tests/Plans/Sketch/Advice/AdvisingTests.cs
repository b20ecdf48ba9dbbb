using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Plans.Sketch;
using PileController.Plans.Sketch.Advice;
using PileController.Settings;
using PileController.Units;

namespace PileController.Tests.Plans.Sketch.Advice;

/// <summary>Advice is reckoned, never canned: each figure is the difference of two trials made anew here.</summary>
public class AdvisingTests
{
    private static SketchTrials Trials => Sketched.DemoTrials;

    private static HeapBuild Heap => PileSettings.AlderBank.Heap;

    [Fact]
    public void Turns_AddedAndTakenAway_TellTheDifferenceOfTwoTrials()
    {
        CoilBuild coil = Heap.Coil;
        AssertTells("turns", Heap with { Coil = coil with { LengthM = coil.LengthM + (4 * Math.PI * coil.RadiusM) } });
        AssertTells("lessPipe", Heap with { Coil = coil with { LengthM = coil.LengthM / 2 } });
    }

    [Fact]
    public void Cover_MadeThicker_TellsTheDifferenceOfTwoTrials() =>
        AssertTells("cover", Heap with { CoverThicknessM = Heap.CoverThicknessM + 0.15 });

    [Fact]
    public void Heap_MadeLarger_TellsTheDifferenceOfTwoTrials()
    {
        double size = Math.Cbrt(1.15);
        AssertTells("heap", Heap with { WetMassKg = Heap.WetMassKg * 1.15, RadiusM = Heap.RadiusM * size, HeightM = Heap.HeightM * size });
    }

    [Fact]
    public void Radius_Advised_IsTheBestOfThePlacesAndItsTrialSaysSo()
    {
        PlanWords advice = Of("radius");
        SketchPlace best = Sketched.Demo.Coil.Places.MaxBy(p => p.MeanDrawnWatts)!;

        Assert.Contains(Show.Length(best.RadiusM, UnitSystem.Metric), advice.Metric, StringComparison.Ordinal);
        AssertTells("radius", Heap with { Coil = Heap.Coil with { RadiusM = best.RadiusM } });
    }

    [Fact]
    public void Pump_MadeBigger_MovesMoreAndIsNotWorthIt()
    {
        PlanWords advice = Of("pump");
        HeapTrialResult changed = Trials.With(LoopAdvice.BiggerPump(PileSettings.AlderBank.Loop));

        Assert.Equal(changed.DrawnWatts - Trials.Base.DrawnWatts, advice.Watts!.Value, 9);
        Assert.Contains("not worth it", advice.Metric, StringComparison.Ordinal);
        Assert.True(advice.Watts < Of("radius").Watts);
    }

    [Fact]
    public void Advice_Counted_ComesBestFirstAndWhatIsNotWorthItLast()
    {
        IReadOnlyList<PlanWords> all = Sketched.Demo.Advice;
        PlanWords[] idle = [.. all.Where(a => !a.Worth)];
        double[] worth = [.. all.TakeWhile(a => a.Kind is not "rewetting").Select(a => a.Watts!.Value)];

        Assert.Equal(idle, all.TakeLast(idle.Length));
        Assert.Contains(idle, a => a.Kind == "pump");
        Assert.DoesNotContain(all, a => a.Worth && a.Metric.Contains("not worth it", StringComparison.Ordinal));
        Assert.True(worth.Length >= 5 && worth.Length + idle.Length >= 10, $"{worth.Length} advised, {idle.Length} not worth it");
        Assert.Equal(worth.OrderDescending(), worth);
        Assert.Equal(idle.Select(a => a.Watts!.Value).OrderDescending(), idle.Select(a => a.Watts!.Value));
    }

    [Fact]
    public void Lift_OfAnOpenLoop_TellsTheSpeedBelowWhichNothingFlows()
    {
        // 2 m of 8 m of head: by the affinity laws half the speed.
        SketchTrials trials = Sketched.Trials(PileSettings.AlderBank with { Loop = PileSettings.AlderBank.Loop with { StaticLiftM = 2 } });
        PlanWords advice = Assert.Single(LoopAdvice.Of(trials), a => a.Kind == "lift");

        Assert.True(advice.Worth);
        Assert.Contains("below 50 % of its speed", advice.Metric, StringComparison.Ordinal);
    }

    [Fact]
    public void Curtain_AlreadyClose_IsNotAdvised()
    {
        PileSettings close = PileSettings.AlderBank with { House = PileSettings.AlderBank.House with { CurtainSaving = 0.5 } };
        SketchTrials trials = Sketched.Trials(close);

        Assert.DoesNotContain(HouseAdvice.Of(trials, HouseLoad.Of(trials)), a => a.Kind == "curtain");
        Assert.Contains(Sketched.Demo.Advice, a => a.Kind == "curtain");
    }

    [Fact]
    public void Wetting_OfADryHeap_TellsLitresWeeksAndTheDifferenceOfTwoTrials()
    {
        SketchTrials trials = Sketched.Trials(PileSettings.AlderBank with { Heap = Heap with { MoistureFraction = 0.42, WetMassKg = 7000 } });
        PlanWords advice = Assert.Single(WettingAdvice.Of(trials));
        HeapTrialResult wetted = WettingAdvice.Wetted(trials, drawn: false);

        // Left alone it dries more than when drawn on: so much water there may be to give back.
        Assert.True(trials.Undrawn.DriesOnDay is not null && trials.Undrawn.WaterLostKg > trials.Base.WaterLostKg);

        Assert.Contains(Show.Volume(wetted.WettedKg, UnitSystem.Metric), advice.Metric, StringComparison.Ordinal);
        Assert.Contains("from week", advice.Metric, StringComparison.Ordinal);
        Assert.Contains(
            Show.Power(Math.Abs(wetted.GeneratedWatts - trials.Undrawn.GeneratedWatts), UnitSystem.Metric), advice.Metric, StringComparison.Ordinal);
        Assert.Null(advice.Watts);
    }

    [Fact]
    public void Wetting_OfAHeapThatStaysMoist_SaysThatNoneIsNeeded()
    {
        SketchTrials trials = Sketched.Trials(PileSettings.AlderBank with { Heap = Heap with { MoistureFraction = 0.68 } });

        Assert.Contains("no wetting is needed", Assert.Single(WettingAdvice.Of(trials)).Metric, StringComparison.Ordinal);
    }

    [Fact]
    public void QuietHeap_AsAWhole_ChecksProbeBeforeDrawAndWarnsOfFire()
    {
        string told = Of("quietHeap").Metric;

        Assert.True(told.IndexOf("Probe", StringComparison.Ordinal) < told.IndexOf("Moisture", StringComparison.Ordinal));
        Assert.True(told.IndexOf("Moisture", StringComparison.Ordinal) < told.IndexOf("Air", StringComparison.Ordinal));
        Assert.Contains("80.0 °C", told, StringComparison.Ordinal);
        Assert.EndsWith(Say.LocalCodes, told, StringComparison.Ordinal);
    }

    private static PlanWords Of(string kind) => Assert.Single(Sketched.Demo.Advice, a => a.Kind == kind);

    private static void AssertTells(string kind, HeapBuild changed)
    {
        PlanWords advice = Of(kind);
        double gain = Trials.With(changed).DrawnWatts - Trials.Base.DrawnWatts;

        Assert.Equal(gain, advice.Watts!.Value, 6);
        Assert.Contains(Show.Power(Math.Abs(gain), UnitSystem.Metric), advice.Metric, StringComparison.Ordinal);
        Assert.Contains(Show.Power(Math.Abs(gain), UnitSystem.Us), advice.Us, StringComparison.Ordinal);
    }
}
