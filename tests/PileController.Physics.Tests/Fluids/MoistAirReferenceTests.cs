using PileController.Physics.Fluids;

namespace PileController.Physics.Tests.Fluids;

public class MoistAirReferenceTests
{
    private const double JoulesPerKgPerBtuPerPound = 2326;
    private const double CubicMetresPerSecondPerCfm = 4.719474432e-4;
    private const double CubicFeetPerPoundPerM3PerKg = 16.018463374;

    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("moist-air");

    // Inlet of the "drawn through the heap" rows.
    private static readonly double InletRatio = MoistAir.HumidityRatioFromRelative(10, 0.5);
    private static readonly double InletEnthalpy = MoistAir.EnthalpyJPerKg(10, InletRatio);
    private static readonly double DryAirPerCfm = CubicMetresPerSecondPerCfm / MoistAir.SpecificVolumeM3PerKg(10, InletRatio);

    private static readonly Dictionary<string, Func<double>> Computed = new()
    {
        ["AIR-002"] = () => MoistAir.SaturationPressurePa(5),
        ["AIR-003"] = () => MoistAir.SaturationPressurePa(25),
        ["AIR-004"] = () => MoistAir.SaturationPressurePa(50),
        ["AIR-005"] = () => MoistAir.SaturationPressurePa(100),
        ["AIR-006"] = () => MoistAir.SaturationPressurePa(-5),
        ["AIR-007"] = () => MoistAir.SaturatedHumidityRatio(5),
        ["AIR-008"] = () => MoistAir.SaturatedHumidityRatio(25),
        ["AIR-009"] = () => MoistAir.SaturatedHumidityRatio(50),
        ["AIR-010"] = () => MoistAir.SaturatedHumidityRatio(85),
        ["AIR-011"] = () => MoistAir.SaturatedEnthalpyJPerKg(5),
        ["AIR-012"] = () => MoistAir.SaturatedEnthalpyJPerKg(25),
        ["AIR-013"] = () => MoistAir.SaturatedEnthalpyJPerKg(50),
        ["AIR-014"] = () => MoistAir.SaturatedEnthalpyJPerKg(85),
        ["AIR-015"] = () => MoistAir.SaturatedEnthalpyJPerKg(-5),
        ["AIR-016"] = () => AboveZeroFahrenheit(5),
        ["AIR-017"] = () => AboveZeroFahrenheit(25),
        ["AIR-018"] = () => AboveZeroFahrenheit(50),
        ["AIR-019"] = () => AboveZeroFahrenheit(85),
        ["AIR-020"] = () => MoistAir.EnthalpyJPerKg(25, 0),
        ["AIR-021"] = () => MoistAir.SpecificVolumeM3PerKg(25, 0),
        ["AIR-022"] = () => MoistAir.SpecificVolumeM3PerKg(25, 0) * CubicFeetPerPoundPerM3PerKg,
        ["AIR-023"] = () => MoistAir.EnthalpyJPerKg(30, 0.02),
        ["AIR-025"] = () => MoistAir.SpecificVolumeM3PerKg(30, 0.02, 95461),
        ["AIR-026"] = () => MoistAir.HumidityRatio(3169.7, 95461),
        ["AIR-027"] = () => MoistAir.HumidityRatioFromWetBulb(30, 25, 95461),
        ["AIR-028"] = () => MoistAir.WetBulbC(7, 0.61, 100_000),
        ["AIR-029"] = () => MoistAir.EnthalpyJPerKg(40, MoistAir.HumidityRatioFromWetBulb(40, 20)),
        ["AIR-030"] = () => MoistAir.HumidityRatioFromWetBulb(40, 20),
        ["AIR-031"] = () => MoistAir.PressureAtAltitudePa(500),
        ["AIR-032"] = () => MoistAir.PressureAtAltitudePa(1000),
        ["AIR-057"] = () => Released(60, 30) / 1000,
        ["AIR-058"] = () => Released(60, 30) / (MoistAir.DryAirJPerKgK * 30),
        ["AIR-059"] = () => Released(65, 30) / 1000,
        ["AIR-060"] = () => Released(65, 30) / (MoistAir.DryAirJPerKgK * 35),
        ["AIR-061"] = () => Released(50, 30) / 1000,
        ["AIR-062"] = () => Released(50, 30) / (MoistAir.DryAirJPerKgK * 20),
        ["AIR-063"] = () => Released(30, 10) / 1000,
        ["AIR-064"] = () => Released(30, 10) / (MoistAir.DryAirJPerKgK * 20),
        ["AIR-065"] = () => 100 * HeatPerCfm(50) / 1000,
        ["AIR-066"] = () => 100 * WaterPerCfm(50) * 3600,
        ["AIR-067"] = () => 100 * HeatPerCfm(60) / 1000,
        ["AIR-068"] = () => 100 * WaterPerCfm(60) * 3600,
        ["AIR-069"] = () => 100 * HeatPerCfm(65) / 1000,
        ["AIR-070"] = () => 100 * WaterPerCfm(65) * 3600,
        ["AIR-071"] = () => 2000 / HeatPerCfm(60),
        ["AIR-072"] = () => 2000 / HeatPerCfm(60) * WaterPerCfm(60) * 86400,
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void MoistAir_AtPublishedConditions_AgreesWithTheReference(string id)
    {
        ReferenceRow row = Rows[id];
        row.Check(Computed.TryGetValue(id, out Func<double>? compute) ? compute() : SaturatedAtTheTemperatureOf(row));
    }

    // The table of saturated air states "quantity: 40 degC, 101325 Pa".
    private static double SaturatedAtTheTemperatureOf(ReferenceRow row)
    {
        string[] parts = row.Conditions.Split(": ");
        double temperatureC = double.Parse(parts[1].Split(' ')[0]);
        double ratio = MoistAir.SaturatedHumidityRatio(temperatureC);
        return parts[0] switch
        {
            "saturated humidity ratio" => ratio,
            "saturated air enthalpy" => MoistAir.SaturatedEnthalpyJPerKg(temperatureC) / 1000,
            "saturated air volume" => MoistAir.SpecificVolumeM3PerKg(temperatureC, ratio),
            _ => throw new InvalidOperationException($"{row.Id} is not computed: {row.Conditions}."),
        };
    }

    private static double AboveZeroFahrenheit(double temperatureC) =>
        (MoistAir.SaturatedEnthalpyJPerKg(temperatureC) - MoistAir.EnthalpyJPerKg(-160.0 / 9, 0)) / JoulesPerKgPerBtuPerPound;

    private static double Released(double fromC, double toC) =>
        MoistAir.SaturatedEnthalpyJPerKg(fromC) - MoistAir.SaturatedEnthalpyJPerKg(toC);

    private static double HeatPerCfm(double exhaustC) => DryAirPerCfm * (MoistAir.SaturatedEnthalpyJPerKg(exhaustC) - InletEnthalpy);

    private static double WaterPerCfm(double exhaustC) => DryAirPerCfm * (MoistAir.SaturatedHumidityRatio(exhaustC) - InletRatio);
}
