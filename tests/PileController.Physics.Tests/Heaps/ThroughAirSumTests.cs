using CsCheck;
using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Heaps;

public class ThroughAirSumTests
{
    private const double CubicMetresPerSecondPerCfm = 4.719474432e-4;
    private const double WattsPerBtuPerHour = 0.293071070172;

    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("air-circuits");

    private static readonly Dictionary<string, Func<double>> Computed = new()
    {
        ["AIR-057"] = () => ReleasedKJPerKg(60, 30),
        ["AIR-059"] = () => ReleasedKJPerKg(65, 30),
        ["AIR-061"] = () => ReleasedKJPerKg(50, 30),
        ["AIR-063"] = () => ReleasedKJPerKg(30, 10),
        ["AIR-065"] = () => Hundred(50).TotalWatts / 1000,
        ["AIR-066"] = () => Hundred(50).WaterLostKgPerDay / 24,
        ["AIR-067"] = () => Hundred(60).TotalWatts / 1000,
        ["AIR-068"] = () => Hundred(60).WaterLostKgPerDay / 24,
        ["AIR-069"] = () => Hundred(65).TotalWatts / 1000,
        ["AIR-070"] = () => Hundred(65).WaterLostKgPerDay / 24,
        ["AIR-072"] = () => Cfm(7.79, 60).WaterLostKgPerDay,
        ["TRD-011"] = () => ThroughAir.Of(CubicMetresPerSecondPerCfm, (70 - 32) / 1.8, 0, (71 - 32) / 1.8).ClosedDuctWatts / WattsPerBtuPerHour,
        ["HYD-062"] = () => Friction.Churchill(1e5, 1e-4),
        ["DCT-001"] = () => InchesPer100Feet(20, 4000),
        ["DCT-002"] = () => FeetPerMinute(20, 4000),
        ["DCT-003"] = () => InchesPer100Feet(60, 100_000),
        ["DCT-004"] = () => FeetPerMinute(60, 100_000),
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void AirCircuits_AtPublishedConditions_AgreeWithTheReference(string id) => Rows[id].Check(Computed[id]());

    [Fact]
    public void ThroughAir_AnyHeapWarmerThanItsInlet_CarriesMoreThanADryDuctAndSplitsIntoItsParts() =>
        Gen.Select(Gen.Double[0.0005, 0.05], Gen.Double[-30, 25], Gen.Double[0, 1], Gen.Double[1, 50]).Sample((flow, inletC, humidity, riseK) =>
        {
            ThroughAir air = ThroughAir.Of(flow, inletC, humidity, Math.Max(1, inletC + riseK));
            double enthalpy = air.DryAirKgPerS * (MoistAir.SaturatedEnthalpyJPerKg(air.HeapC) - MoistAir.EnthalpyJPerKg(inletC, air.InletRatio));

            Assert.Equal(enthalpy, air.TotalWatts, 1e-9 * (1 + Math.Abs(enthalpy)));
            Assert.True(air.TotalWatts > air.ClosedDuctWatts);
            Assert.True(air.WaterLostKgPerDay > 0);
        });

    [Fact]
    public void ThroughAir_OfAHotterHeap_RisesFasterThanALine() =>
        Gen.Double[20, 70].Sample(c =>
            Assert.True(Hundred(c + 10).TotalWatts - Hundred(c + 5).TotalWatts > Hundred(c + 5).TotalWatts - Hundred(c).TotalWatts));

    [Fact]
    public void ThroughAir_CooledInTheHouse_GivesNoMoreThanItTookAboveThat() =>
        Gen.Select(Gen.Double[0.001, 0.05], Gen.Double[1, 30], Gen.Double[1, 40]).Sample((flow, houseC, riseK) =>
        {
            ThroughAir air = ThroughAir.Of(flow, houseC, 1, houseC + riseK);
            Condensed given = air.CooledTo(houseC);

            Assert.InRange(given.ReleasedWatts, air.ClosedDuctWatts, air.TotalWatts);

            // What was saturated at the house's temperature leaves it so: the water taken up is the water that drips.
            double litres = air.WaterLostKgPerDay / Water.DensityKgPerM3(houseC) * 1000;
            Assert.Equal(litres, given.CondensateLitresPerDay, 1e-9 * litres);
        });

    [Fact]
    public void ThroughAir_OfItsOxygen_GivesCarbonDioxideAndHeatOfOneReaction()
    {
        ThroughAir air = Hundred(60);

        // A molecule of carbon dioxide, 44, for each of oxygen, 32, of the 15.95 parts of 20.95 that are used.
        Assert.Equal(air.OxygenSuppliedKgPerDay * (15.95 / 20.95) * (44.0 / 32), air.CarbonDioxideKgPerDay, 1e-9);
        Assert.Equal(Stuff.HeatPerSolids / Stuff.CarbonDioxidePerSolids, air.HeatOfOxygenWatts * 86_400 / air.CarbonDioxideKgPerDay, 1e-3);
    }

    [Fact]
    public void ThroughAir_OfWetterAirThanTheHeapHolds_LeavesWaterInIt() =>
        Assert.True(ThroughAir.Of(0.01, 30, 1, 15).WaterLostKgPerDay < 0);

    [Fact]
    public void DuctRun_OfTwiceTheFlow_LosesAboutFourTimesThePressureAndEightTimesThePower()
    {
        DuctRun duct = new(30, 0.1);
        Assert.InRange(duct.LossPa(0.08, 20) / duct.LossPa(0.04, 20), 3.4, 4);
        Assert.InRange(duct.BlowerWatts(0.08, 20, 0.3) / duct.BlowerWatts(0.04, 20, 0.3), 6.8, 8);
        Assert.Equal(0, duct.LossPa(0, 20));
    }

    [Fact]
    public void DuctRun_OfBlowerAtHalfTheEfficiency_NeedsTwiceThePower()
    {
        DuctRun duct = new(12, 0.15);
        Assert.Equal(2 * duct.BlowerWatts(0.05, 40, 0.6), duct.BlowerWatts(0.05, 40, 0.3), 1e-9);
    }

    private static ThroughAir Hundred(double heapC) => Cfm(100, heapC);

    private static ThroughAir Cfm(double flow, double heapC) => ThroughAir.Of(flow * CubicMetresPerSecondPerCfm, 10, 0.5, heapC);

    // The reference leaves the condensate's own warmth in the sum; it is put back here.
    private static double ReleasedKJPerKg(double fromC, double toC)
    {
        ThroughAir air = Hundred(fromC);
        double dripping = air.DryAirKgPerS * (air.HeapRatio - MoistAir.SaturatedHumidityRatio(toC)) * Water.EnthalpyJPerKg(toC);
        return (air.CooledTo(toC).ReleasedWatts + dripping) / air.DryAirKgPerS / 1000;
    }

    private static double InchesPer100Feet(double inches, double cfm) =>
        new DuctRun(30.48, inches * 0.0254).LossPa(StandardKgPerS(cfm), 20) / 249.08891;

    private static double FeetPerMinute(double inches, double cfm) =>
        new DuctRun(1, inches * 0.0254).VelocityMPerS(StandardKgPerS(cfm), 20) / 0.3048 * 60;

    private static double StandardKgPerS(double cfm) => cfm * CubicMetresPerSecondPerCfm * MoistAir.DensityKgPerM3(20, 0);
}
