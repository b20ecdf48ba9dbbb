using PileController.Physics.Fluids;

namespace PileController.Physics.Tests.Fluids;

public class WaterReferenceTests
{
    private const double LitresPerGallon = 3.785411784;
    private const double KgPerPound = 0.45359237;

    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("water");

    private static readonly Dictionary<string, Func<double>> Computed = new()
    {
        ["WAT-017"] = () => Water.ViscosityPaS(25) * 1e6,
        ["WAT-018"] = () => Water.ConductivityWPerMK(25) * 1e3,
        ["WAT-071"] = () => Water.DensityKgPerM3(10) * LitresPerGallon / 1000 / KgPerPound,
        ["WAT-072"] = () => Water.DensityKgPerM3(60) * LitresPerGallon / 1000 / KgPerPound,
        ["WAT-073"] = () => Water.MassFlowKgPerS(LitresPerGallon, 10) * Water.SpecificHeatJPerKgK(10),
        ["WAT-074"] = () => Water.MassFlowKgPerS(LitresPerGallon, 60) * Water.SpecificHeatJPerKgK(60),
        ["WAT-075"] = () => Water.DrawWatts(LitresPerGallon, 10, 60, 10) / 1000,
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Water_AtPublishedConditions_AgreesWithTheReference(string id)
    {
        ReferenceRow row = Rows[id];
        row.Check(Computed.TryGetValue(id, out Func<double>? compute) ? compute() : AtTheTemperatureOf(row));
    }

    // The tables state "quantity: 40 degC, saturated".
    private static double AtTheTemperatureOf(ReferenceRow row)
    {
        string[] parts = row.Conditions.Split(": ");
        double temperatureC = double.Parse(parts[1].Split(' ')[0]);
        return (parts[0].Split(" (")[0], row.Unit) switch
        {
            ("liquid density", "kg/m3") => Water.DensityKgPerM3(temperatureC),
            ("liquid heat capacity", "kJ/(kg.K)") => Water.SpecificHeatJPerKgK(temperatureC) / 1000,
            ("liquid enthalpy", "kJ/kg") => Water.EnthalpyJPerKg(temperatureC) / 1000,
            ("liquid dynamic viscosity", "uPa.s") => Water.ViscosityPaS(temperatureC) * 1e6,
            ("liquid Prandtl number", "-") => Water.Prandtl(temperatureC),
            _ => throw new InvalidOperationException($"{row.Id} is not computed: {row.Conditions} in {row.Unit}."),
        };
    }
}
