using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Exchangers;

public class ExchangerReferenceTests
{
    private const double LitresPerGallon = 3.785411784;
    private const double Inch = 0.0254;

    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("exchangers");

    // Steel conductivity 56.045 W/(m·K): the ht library's test of cylindrical layers.
    private static readonly InsulatedLine SteamLine = new(0.0779272, 0.0779272 + (2 * 0.0054864), 56.045, 0.05, 0.0598535265, 22.697193);

    private static readonly Dictionary<string, Func<double>> Computed = new()
    {
        ["HTX-001"] = () => TubeFilm.Nusselt(1000, 5),
        ["HTX-005"] = () => TubeFilm.Nusselt(1e5, 1.2),
        ["HTX-006"] = () => TubeFilm.Nusselt(1e5, 1.2),
        ["HTX-007"] = () => TubeFilm.GnielinskiNusselt(1e5, 1.2, 0.0185),
        ["HTX-008"] = () => TubeFilm.Nusselt(1e5, 1.2),
        ["HTX-009"] = () => TubeFilm.Nusselt(1e5, 1.2),
        ["HTX-011"] = () => Effectiveness.Counterflow(5, 0.7),
        ["HTX-012"] = () => Effectiveness.ParallelFlow(5, 0.7),
        ["HTX-016"] = () => MeanDifference.LogMeanK(100 - 40.2, 60 - 30),
        ["HTX-017"] = () => MeanDifference.LogMeanK(100 - 60, 60 - 20),
        ["HTX-018"] = () => Effectiveness.OneSideIsothermal(0.1),
        ["HTX-019"] = () => Effectiveness.OneSideIsothermal(0.25),
        ["HTX-020"] = () => Effectiveness.OneSideIsothermal(0.5),
        ["HTX-021"] = () => Effectiveness.OneSideIsothermal(1),
        ["HTX-022"] = () => Effectiveness.OneSideIsothermal(2),
        ["HTX-023"] = () => Effectiveness.OneSideIsothermal(3),
        ["HTX-024"] = () => 3 / Surroundings.BuriedMKPerW(1, 100, 1), // a shape factor is length over resistance at unit conductivity
        ["HTX-025"] = () => SteamLine.LossWPerM(453.15, 301.15),
        ["HTX-026"] = () => SteamLine.SurfaceC(453.15, 301.15), // differences alone count, so kelvin will do
        ["HTX-028"] = () => LineSource(0.0417),
        ["HTX-029"] = () => LineSource(0.25),
        ["HTX-030"] = () => LineSource(1),
        ["HTX-031"] = () => LineSource(7),
        ["HTX-032"] = () => LineSource(30),
        ["HTX-033"] = () => LineSource(120),
        ["HTX-034"] = () => Surroundings.LayerMKPerW(0.475 * Inch, 0.625 * Inch, 0.41),
        ["HTX-035"] = () => SoakedRun.OutletC(40, 60, 0.5 * 100, GallonPerMinute),
        ["HTX-036"] = () => SoakedRun.HeatWatts(40, 60, 0.5 * 100, GallonPerMinute),
        ["HTX-037"] = () => SoakedRun.OutletC(40, 60, 0.5 * 304.8, GallonPerMinute),
        ["HTX-038"] = () => TubeFilm.WaterWPerM2K(LitresPerGallon, 0.475 * Inch, 10),
        ["HTX-039"] = () => TubeFilm.WaterWPerM2K(LitresPerGallon, 0.671 * Inch, 10),
        ["HTX-041"] = () => DrumJPerK / 1000,
        ["HTX-043"] = () => new LumpedTank(DrumJPerK, 8 * 2.041).TimeConstantSeconds / 3600,
        ["HTX-044"] = () => new LumpedTank(DrumJPerK, 0.7 * 2.041).TimeConstantSeconds / 3600,
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    private static double GallonPerMinute => Water.MassFlowKgPerS(LitresPerGallon, 40) * Water.SpecificHeatJPerKgK(40);

    private static double DrumJPerK => 0.2082 * Water.DensityKgPerM3(20) * Water.SpecificHeatJPerKgK(20);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Exchangers_AtPublishedConditions_AgreeWithTheReference(string id) => Rows[id].Check(Computed[id]());

    [Fact]
    public void Film_InTheWidestPexAtOneGallon_LiesBetweenLaminarAndTurbulent() =>
        // HTX-040, computed from Nu 3.66 and Gnielinski: 96.6 W/(m²·K) if laminar at 10 °C, 780 at 20 °C if turbulent; Re 2806 is neither.
        Assert.InRange(TubeFilm.WaterWPerM2K(LitresPerGallon, PipeSize.Named("1 in PEX").InnerDiameterM, 10), 96.6, 780);

    [Fact]
    public void Effectiveness_OfAPublishedCrossflow_LiesBetweenParallelAndCounterflow()
    {
        // HTX-013, HTX-014: Incropera's oil and steam crossflow, NTU 2.16007259528, ratio 0.14242, 0.831218036142 (ht library test values).
        const double published = 0.831218036142;
        Assert.InRange(published, Effectiveness.ParallelFlow(2.16007259528, 0.14242), Effectiveness.Counterflow(2.16007259528, 0.14242));
    }

    [Fact]
    public void LateLineSource_AfterAMonth_AgreesWithTheExactOne() =>
        Assert.Equal(LineSource(30), Surroundings.LineSourceLateWPerMK(0.00794, 0.4, 2.5e6, 30 * 86400), 1e-4);

    private static double LineSource(double days) => Surroundings.LineSourceWPerMK(0.00794, 0.4, 2.5e6, days * 86400);
}
