using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Fluids;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc water: properties of liquid water.</summary>
internal static class CalcWater
{
    private static readonly Option<double> Temperature = Ask.Quantity(
        "--temp", "Temperature of the water.", "°C", Dimension.Temperature, Water.LowestC, Water.HighestC).Needed();

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("water", "Properties of liquid water.", "PileController calc water --temp \"104 °F\"") { Temperature, Json };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        double celsius = parse.GetRequiredValue(Temperature);
        WaterAnswer answer = new(
            Water.DensityKgPerM3(celsius), Water.SpecificHeatJPerKgK(celsius), Water.EnthalpyJPerKg(celsius),
            Water.ViscosityPaS(celsius), Water.ConductivityWPerMK(celsius));
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, answer);
            return ExitCodes.Done;
        }

        Answer.WriteRows(
            parse,
            ("temperature", Show.Both(s => Show.Temperature(celsius, s))),
            ("density", $"{answer.DensityKgPerM3:F2} kg/m3 ({answer.DensityKgPerM3 / Customary.PoundPerCubicFoot:F3} lb/ft3)"),
            ("specific heat", $"{answer.SpecificHeatJPerKgK:F1} J/kgK ({answer.SpecificHeatJPerKgK / Customary.BtuPerPoundF:F4} BTU/lb°F)"),
            ("enthalpy", $"{answer.EnthalpyJPerKg:F0} J/kg ({answer.EnthalpyJPerKg / Customary.BtuPerPound:F2} BTU/lb)"),
            ("viscosity", $"{answer.ViscosityPaS * 1000:F4} mPa·s (= cP)"),
            ("conductivity", $"{answer.ConductivityWPerMK:F4} W/mK ({answer.ConductivityWPerMK / Customary.BtuPerHourFootF:F4} BTU/hft°F)"));
        return ExitCodes.Done;
    }

    private sealed record WaterAnswer(
        double DensityKgPerM3, double SpecificHeatJPerKgK, double EnthalpyJPerKg, double ViscosityPaS, double ConductivityWPerMK);
}
