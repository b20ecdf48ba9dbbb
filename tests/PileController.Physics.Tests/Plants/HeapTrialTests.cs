using CsCheck;
using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using Xunit.Abstractions;

namespace PileController.Physics.Tests.Plants;

/// <summary>A heap alone, drawn on as hard as it bears, in a recorded winter (NOAA GHCN-Daily; see tests/Weather).</summary>
public class HeapTrialTests(ITestOutputHelper output)
{
    private const int Days = 150;

    [Theory]
    [MemberData(nameof(PlantVariant.All), MemberType = typeof(PlantVariant))]
    public void Trial_WithAnythingBuried_ClosesItsBalance(string variant)
    {
        TrialDraw draw = new() { HeldMoisture = 0.6 };
        HeapTrialResult trial = HeapTrial.Run(PlantVariant.Of(variant).Heap, draw, Sites("New York", 2012, Days));

        Assert.True(trial.WettedKg > 0);
        Assert.True(Gap(trial) < 1e-9, $"{Gap(trial):E2}");
        Assert.True(Gap(trial with { WettingJ = 0 }) > 1e-6, "the balance would not notice a flux left out");
    }

    [Theory]
    [InlineData(PlantVariant.Shipped, "New York", 2012)]
    [InlineData(PlantVariant.Shipped, "Seattle", 2013)]
    [InlineData(PlantVariant.NoDrum, "Seattle", 2013)]
    [InlineData(PlantVariant.NoCoil, "New York", 2012)]
    [InlineData(PlantVariant.ThroughHeap, "New York", 2012)]
    public void LongSteps_AgainstStepsOfAMinute_AgreeWithinTwoPerCent(string variant, string city, int year)
    {
        HeapBuild build = PlantVariant.Of(variant).Heap;
        HeapTrialResult trial = HeapTrial.Run(build, new TrialDraw(), Sites(city, year, Days));
        HeapTrialResult fine = HeapTrial.Run(
            build, new TrialDraw(), Sites(city, year, Days, Heap.SlowStepSeconds), Heap.SlowStepSeconds);
        output.WriteLine($"{variant} {city}: drawn {trial.DrawnWatts:F2} W against {fine.DrawnWatts:F2}, made {trial.GeneratedWatts:F2} against {fine.GeneratedWatts:F2}");

        Assert.InRange(trial.DrawnWatts / fine.DrawnWatts, 0.98, 1.02);
        Assert.InRange(trial.GeneratedWatts / fine.GeneratedWatts, 0.98, 1.02);
        Assert.Equal(fine.LitOnDay!.Value, trial.LitOnDay!.Value, 0.1);
    }

    [Fact]
    public void Undrawn_AgainstThePlantWithItsPumpAtRest_MakesAndLosesTheSameHeat()
    {
        const int days = 40;
        PlantBuild build = PlantVariant.Holding(new HeapBuild());
        long start = Weathers.FirstOfNovember("New York", 2012);
        Plant plant = new(build, Weathers.Of("New York"), Plant.Fresh(build, Weathers.Of("New York"), start));
        plant.Step(new PlantInputs(0, 0, 0, false, 0), days * 86_400.0);

        HeapTrialResult trial = HeapTrial.Run(
            build.Heap, new TrialDraw { FlowLitresPerMinute = 0, Blows = false }, Sites("New York", 2012, days));

        Assert.InRange(trial.Ledger.GeneratedJ / plant.Heap.Ledger.GeneratedJ, 0.98, 1.02);
        Assert.InRange(trial.Ledger.LostJ / plant.Heap.Ledger.LostJ, 0.98, 1.02);
        Assert.Equal(0, trial.Ledger.DrawnJ);
    }

    [Fact]
    public void AnyHeap_DrawnOn_NeverGivesMoreThanWhatCanBurnInIt() =>
        AnyHoldingTests.AnyHeap.Sample(build =>
        {
            HeapTrialResult trial = HeapTrial.Run(build, new TrialDraw(), Sites("New York", 2012, 60));
            double degradableKg = build.WetMassKg * (1 - build.MoistureFraction) * (build.FastFraction + build.SlowFraction);
            double mostJ = degradableKg * Stuff.HeatPerSolids;

            Assert.True(trial.Ledger.GeneratedJ <= mostJ * (1 + 1e-12), $"made {trial.Ledger.GeneratedJ} of {mostJ}");
            Assert.Equal(trial.Ledger.GeneratedJ, trial.Ledger.BurntKg * Stuff.HeatPerSolids, 1e-9 * mostJ);
            Assert.True(Gap(trial) < 1e-9, $"{Gap(trial):E2}");
            Assert.True(trial.LitOnDay is not null || trial.Ledger.DrawnJ == 0, "drawn before it lit");
            Assert.All(trial.Weeks, week => Assert.InRange(week.OxygenShare, 0, 1));
        }, iter: 60);

    [Fact]
    public void AnyWarmHeap_WithMorePipe_GivesNoLessInItsFirstDays() =>
        Gen.Select(AnyHoldingTests.AnyHeap, Gen.Double[10, 200], Gen.Double[1.1, 3]).Sample((any, length, more) =>
        {
            // No floor holds it back: what is drawn is what the bed passes to the pipe. In 8000 heaps the least gain was 0.2 %.
            // (With shells as coarse as four to six the rings round the pipe can be cut so ill that this is lost.)
            TrialDraw draw = new() { Blows = false, FloorC = -50, LitC = -50 };
            HeapBuild build = WithPipe(any with { BuildTemperatureC = 55, DrumLitres = 0, Shells = 20 }, length);
            AssertKept(1, build, length, more, draw, 3);
        }, iter: 60);

    [Fact]
    public void AnyHeap_WithMorePipe_GivesOverMonthsAtMostAFifthLess() =>
        Gen.Select(AnyHoldingTests.AnyHeap, Gen.Double[10, 200], Gen.Double[1.1, 3]).Sample((any, length, more) =>
            // A hard draw cools the bed round the turns, whose microbes then make less. In 1500 heaps more pipe cost 14 %
            // at worst, and more than 3 % in 7 of the 653 that lit.
            AssertKept(0.80, WithPipe(any, length), length, more, new TrialDraw { Blows = false }, 60), iter: 60);

    private static HeapBuild WithPipe(HeapBuild build, double length) => build with
    {
        Duct = new DuctBuild { LengthM = 0 },
        Coil = new CoilBuild { LengthM = length, RadiusM = build.RadiusM * 0.6 },
    };

    private static void AssertKept(double least, HeapBuild build, double length, double more, TrialDraw draw, int days)
    {
        HeapSite[] sites = Sites("Seattle", 2013, days);
        double before = HeapTrial.Run(build, draw, sites).DrawnWatts;
        double after = HeapTrial.Run(WithPipe(build, length * more), draw, sites).DrawnWatts;
        Assert.True(after >= least * before, $"{before:F1} W with {length:F0} m, {after:F1} W with {length * more:F0} m");
    }

    [Fact]
    public void Draw_AtItsFloorAndMargin_HasEndedAndGrowsFromThere()
    {
        TrialDraw draw = new() { FloorC = 45, MarginKelvin = 1, BandKelvin = 6 };

        Assert.Equal(0, draw.Share(44));
        Assert.Equal(0, draw.Share(46));
        Assert.Equal(0.5, draw.Share(49), 12);
        Assert.Equal(1, draw.Share(60));
    }

    [Fact]
    public void Trial_OnTheHardestWinter_KeepsTheActiveZoneAboveItsFloor()
    {
        HeapTrialResult trial = HeapTrial.Run(new HeapBuild(), new TrialDraw(), Sites("New York", 2012, Days));

        Assert.True(trial.DrawnWatts > 300, $"{trial.DrawnWatts:F0} W");
        Assert.All(
            trial.Weeks.Where(week => week.Week > 1 + (trial.LitOnDay / 7)),
            week => Assert.True(week.ActiveZoneC > 45, $"week {week.Week}: {week.ActiveZoneC:F1} °C"));
    }

    [Fact]
    public void Weeks_OfATrial_SumUpToItsWhole()
    {
        HeapTrialResult trial = HeapTrial.Run(new HeapBuild(), new TrialDraw(), Sites("Seattle", 2013, 100));

        Assert.Equal(15, trial.Weeks.Count);
        Assert.Equal(2, trial.Weeks[^1].Days, 9);
        Assert.Equal(trial.Ledger.GeneratedJ, trial.Weeks.Sum(w => w.GeneratedWatts * w.Days * 86_400), 1);
        Assert.Equal(trial.Ledger.LostJ, trial.Weeks.Sum(w => w.LostWatts * w.Days * 86_400), 1);
        Assert.Equal(trial.Ledger.DrawnJ, trial.Weeks.Sum(w => w.DrawnWatts * w.Days * 86_400), 1);
    }

    [Fact]
    public void HeldMoisture_OnADryingHeap_IsHeldByTheWaterThatIsTold()
    {
        HeapBuild dry = new() { MoistureFraction = 0.42, WetMassKg = 7000 };
        HeapSite[] sites = Sites("New York", 2012, Days);
        HeapTrialResult left = HeapTrial.Run(dry, new TrialDraw { FlowLitresPerMinute = 0 }, sites);
        HeapTrialResult held = HeapTrial.Run(dry, new TrialDraw { FlowLitresPerMinute = 0, HeldMoisture = 0.5 }, sites);

        Assert.NotNull(left.DriesOnDay);
        Assert.Equal(0, left.WettedKg);
        Assert.True(held.Weeks[^1].MoistureFraction >= 0.495, $"{held.Weeks[^1].MoistureFraction:F3}");
        Assert.Equal(held.WettedKg, held.Weeks.Sum(w => w.WettedKg), 6);
        Assert.All(held.Weeks, w => Assert.True(w.WettedKg <= 7 * 0.01 * dry.WetMassKg * (1 + 1e-12)));
    }

    private static HeapSite[] Sites(string city, int year, int days, double stepSeconds = HeapTrial.StepSeconds) =>
        HeapTrial.Sites(Weathers.Of(city), Weathers.FirstOfNovember(city, year), days, 9, stepSeconds);

    private static double Gap(HeapTrialResult trial)
    {
        HeapLedger sums = trial.Ledger;
        double missing = trial.StoredChangeJ - (sums.GeneratedJ - sums.LostJ - sums.DrawnJ + trial.WettingJ);
        return Math.Abs(missing) / (sums.GeneratedJ + sums.AirInJ + Math.Abs(sums.LostJ) + Math.Abs(sums.DrawnJ) + Math.Abs(trial.StoredChangeJ) + 1);
    }
}
