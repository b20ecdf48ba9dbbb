using CsCheck;
using PileController.Control;
using PileController.Physics.Heaps;
using PileController.Plans.Ahead;
using PileController.Seasons;
using PileController.Settings;

namespace PileController.Tests.Plans.Ahead;

/// <summary>Many seasons, short ones where the length does not matter.</summary>
public class SeasonAheadTests
{
    private const int Days = 24;

    [Fact]
    public async Task Seasons_OnAnyNumberOfCores_AreTheSame()
    {
        AheadRequest request = AheadBench.Request(seasons: 6, Days);
        IReadOnlyList<SeasonOutcome> alone = await RunAsync(request, cores: 1);
        IReadOnlyList<SeasonOutcome> three = await RunAsync(request, cores: 3);
        Assert.Equal(alone, three);
    }

    [Fact]
    public async Task Season_OfAnyNumberOfThem_IsTheSame()
    {
        IReadOnlyList<SeasonOutcome> few = await RunAsync(AheadBench.Request(seasons: 3, Days));
        IReadOnlyList<SeasonOutcome> more = await RunAsync(AheadBench.Request(seasons: 7, Days));
        Assert.Equal(few, more.Take(3));
        Assert.Equal(7, more.Select(o => o.GeneratedKWh).Distinct().Count());
        Assert.Equal([0, 1, 2, 3, 4, 0, 1], more.Select(o => o.Winter));
    }

    [Fact]
    public async Task Seasons_OfAnotherSeed_AreOthers()
    {
        IReadOnlyList<SeasonOutcome> one = await RunAsync(AheadBench.Request(seasons: 2, Days, seed: 1));
        IReadOnlyList<SeasonOutcome> two = await RunAsync(AheadBench.Request(seasons: 2, Days, seed: 2));
        Assert.All(one.Zip(two), pair => Assert.NotEqual(pair.First.GeneratedKWh, pair.Second.GeneratedKWh));
    }

    [Fact]
    public async Task Progress_OfEverySeason_IsToldOnceAndInOrder()
    {
        List<int> told = [];
        await SeasonAhead.RunAsync(AheadBench.Request(seasons: 5, days: 2), 2, told.Add, CancellationToken.None);
        Assert.Equal([1, 2, 3, 4, 5], told);
    }

    [Fact]
    public async Task Seasons_Cancelled_End() => await Assert.ThrowsAnyAsync<OperationCanceledException>(
        () => SeasonAhead.RunAsync(AheadBench.Request(seasons: 5, Days), 1, null, new CancellationToken(canceled: true)));

    [Fact]
    public void HeatOfASeason_OfAnyHeap_NeverExceedsWhatItsDegradableMassHolds() =>
        Gen.Select(
            Gen.Double[0, 0.5], Gen.Double[0, 0.8], Gen.Double[0.3, 0.75], Gen.Double[1000, 30_000], Gen.Double[-10, -6], Gen.Double[0.8, 4],
            Gen.Long[0, 1_000_000]).Sample(
            (fast, slow, moisture, wetKg, permeability, radius, seed) =>
            {
                PileSettings settings = PileSettings.AlderBank with
                {
                    Heap = new HeapBuild
                    {
                        FastFraction = fast,
                        SlowFraction = slow,
                        MoistureFraction = moisture,
                        WetMassKg = wetKg,
                        PermeabilityM2 = Math.Pow(10, permeability),
                        RadiusM = radius,
                        BuildTemperatureC = 45,
                        Coil = new CoilBuild { RadiusM = 0.7, LengthM = 60 },
                    },
                };
                AheadRequest request = AheadBench.Request(seasons: 1, days: 40, seed, settings, AheadBench.NewYork);
                SeasonOutcome season = SeasonAhead.Run(request, 0, PlanSteps.Planning, CancellationToken.None);

                Assert.InRange(season.GeneratedKWh, 0, season.MostHeatKWh);
                Assert.InRange(season.DryMassLostKg, 0, season.DegradableKg);
                Assert.InRange(season.EnergyErrorFraction, 0, 1e-9);

                // What burns makes the heat: 17.0 MJ/kg (Stuff.HeatPerSolids).
                Assert.Equal(season.DryMassLostKg * Stuff.HeatPerSolids / 3.6e6, season.GeneratedKWh, 1e-6 * (1 + season.GeneratedKWh));
            },
            iter: 30);

    [Fact]
    public void PlanningSteps_OfSeasonsThatAreCold_ComeWithinTwoPercentOfFullSteps()
    {
        AheadRequest newYork = AheadBench.Request(seasons: 2, days: 150, files: AheadBench.NewYork);
        AheadRequest seattle = AheadBench.Request(seasons: 2, days: 150, files: AheadBench.Seattle);
        IReadOnlyList<TickFigure>[] seasons =
        [
            TickCheck.Of(newYork, 0, CancellationToken.None),
            TickCheck.Of(seattle, 0, CancellationToken.None),
            TickCheck.Of(newYork, 1, CancellationToken.None),
        ];

        // Of a winter that is hardly ever too cold a share tells nothing: a kelvin for two days is the least.
        Assert.All(seasons, figures => Assert.True(Of(figures, "coldDegreeHours").Full > 48));

        Assert.All(seasons, figures => Assert.All(Weighty, name => Assert.InRange(Of(figures, name).ErrorShare!.Value, -0.02, 0.02)));
    }

    private static readonly string[] Weighty = ["drawnKWh", "usefulKWh", "generatedKWh", "coldDegreeHours", "dryMassLostKg", "waterLostKg"];

    private static TickFigure Of(IReadOnlyList<TickFigure> figures, string name) => figures.Single(f => f.Name == name);

    [Fact]
    public async Task UndrawnHouse_BesideAWholeUndrawnHoldingWithoutFrostInItsLines_IsAsCold()
    {
        AheadRequest request = AheadBench.Request(seasons: 1, days: 150, files: AheadBench.NewYork);
        SeasonDraw draw = SeasonDraw.Of(request.Settings.Plan.Spreads, request.Seed, 0);
        SeasonPlan plan = DrawnSeason.Plan(request.Settings, request.Winters[0], draw, 150, PlanSteps.Planning);

        // Lines that lie warm need no frost guard, so that the undrawn holding truly draws nothing.
        plan = plan with { Build = plan.Build with { Loop = plan.Build.Loop with { LineExposure = 0 } } };

        (SeasonResult whole, _) = await SeasonRun.RunAsync(plan, TimeProvider.System, null, CancellationToken.None);
        double undrawn = UndrawnHouse.SetPointDegreeHours(plan);
        SeasonResult beside = SeasonRun.Beside(plan, undrawn, (_, _) => { }, CancellationToken.None);

        Assert.Equal(whole.DrawnKWh, beside.DrawnKWh);
        Assert.InRange(beside.UsefulKWh / whole.UsefulKWh, 0.98, 1.02);
        Assert.InRange((beside.UsefulKWh - whole.UsefulKWh) * 1000 / plan.Build.House.LossWPerK / undrawn, -0.005, 0.005);
    }

    [Fact]
    public void UndrawnHouse_WithBackupHeatFitted_IsNotLeftBelowItsMinimum()
    {
        PileSettings fitted = PileSettings.AlderBank with { Control = new ControlSettings { BackupFitted = true } };
        double Hours(PileSettings settings)
        {
            AheadRequest request = AheadBench.Request(1, 150, settings: settings, files: AheadBench.NewYork);
            return UndrawnHouse.SetPointDegreeHours(DrawnSeason.Plan(
                settings, request.Winters[0], SeasonDraw.Of(settings.Plan.Spreads, 1, 0), 150, PlanSteps.Planning));
        }

        Assert.True(Hours(fitted) < 0.9 * Hours(PileSettings.AlderBank));
    }

    private static Task<IReadOnlyList<SeasonOutcome>> RunAsync(AheadRequest request, int cores = 2) =>
        SeasonAhead.RunAsync(request, cores, null, CancellationToken.None);
}
