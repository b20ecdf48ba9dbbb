using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Fluids;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc air: properties of moist air.</summary>
internal static class CalcAir
{
    // The share of vapour up to which the ideal mixture is told; above it the water boils.
    private const double MostVapourShare = 0.99;

    private static readonly Option<double> Temperature =
        Ask.Quantity("--temp", "Temperature of the air.", "°C", Dimension.Temperature, -60, 150).Needed();

    private static readonly Option<double> Humidity = Ask.Of<double>(
        "--humidity", "Relative humidity, % (0.1 to 100).", HumidityText.TryRead).Needed();

    private static readonly Option<double> Pressure =
        Ask.Quantity("--pressure", "Pressure of the air; 101325 Pa, that of sea level, unless given.", "Pa", Dimension.Pressure, 20_000, 200_000).Unless(MoistAir.StandardPressurePa);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("air", "Properties of moist air, per kg of dry air.", "PileController calc air --temp \"55 °C\" --humidity 100")
        {
            Temperature, Humidity, Pressure, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        double celsius = parse.GetRequiredValue(Temperature);
        double relative = parse.GetRequiredValue(Humidity) / 100;
        double pressure = parse.GetValue(Pressure);
        double vapour = relative * MoistAir.SaturationPressurePa(celsius);
        if (vapour > MostVapourShare * pressure)
        {
            parse.InvocationConfiguration.Error.WriteLine(
                $"--temp and --humidity give {vapour:F0} Pa of vapour, more than the air's {pressure:F0} Pa can hold; "
                + $"allowed: at most {MostVapourShare * pressure:F0} Pa, a lower --temp or --humidity");
            return ExitCodes.WrongUse;
        }

        AirState air = MoistAir.State(celsius, relative, pressure);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, air);
            return ExitCodes.Done;
        }

        Answer.WriteRows(
            parse,
            ("temperature", Show.Both(s => Show.Temperature(celsius, s))),
            ("saturation pressure", $"{air.SaturationPressurePa:F1} Pa ({air.SaturationPressurePa / Customary.Psi:F4} psi)"),
            ("humidity ratio", $"{air.HumidityRatioKgPerKg:F6} kg/kg (= lb/lb)"),
            ("enthalpy", $"{air.EnthalpyJPerKgDryAir:F0} J/kg above 0 °C ({air.EnthalpyJPerKgDryAir / Customary.BtuPerPound:F2} BTU/lb above 32 °F)"),
            ("specific volume", $"{air.SpecificVolumeM3PerKg:F5} m3/kg ({air.SpecificVolumeM3PerKg / Customary.CubicFootPerPound:F3} ft3/lb)"),
            ("dew point", Show.Both(s => Show.Temperature(air.DewPointC, s))),
            ("wet bulb", Show.Both(s => Show.Temperature(air.WetBulbC, s))));
        return ExitCodes.Done;
    }
}
