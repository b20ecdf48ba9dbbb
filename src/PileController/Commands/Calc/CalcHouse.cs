using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Houses;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc house: what the house loses on a night.</summary>
internal static class CalcHouse
{
    private static readonly Option<string?> Settings = new("--settings")
    {
        Description = "The settings file; the demo's house unless given.",
        Arity = ArgumentArity.ExactlyOne,
    };

    private static readonly Option<double> Inside =
        Ask.Quantity("--inside", "Air inside.", "°C", Dimension.Temperature, -10, 40).Needed();

    private static readonly Option<double> Outside =
        Ask.Quantity("--outside", "Air outside.", "°C", Dimension.Temperature, -60, 40).Needed();

    private static readonly Option<double> Wind = Ask.Quantity(
        "--wind", "Wind, by which leaks grow; the air changes of the settings as they are unless given.", "m/s", Dimension.Speed, 0, 40).Unless(double.NaN);

    private static readonly Option<NightCurtain> Curtain = Ask.Word(
        "--curtain", "The night curtain, open unless given.",
        ("open", NightCurtain.Open), ("drawn", NightCurtain.Drawn)).Unless(NightCurtain.Open);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "house", "Heat the house loses through its glazing and its leaks, and what would lessen it.",
            "PileController calc house --inside \"45 °F\" --outside \"0 °F\" --wind \"10 mph\"")
        {
            Settings, Inside, Outside, Wind, Curtain, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        double inside = parse.GetRequiredValue(Inside);
        double outside = parse.GetRequiredValue(Outside);
        if (outside > inside)
        {
            parse.InvocationConfiguration.Error.WriteLine(
                $"--outside is {outside:0.##} °C; allowed: at most --inside, {inside:0.##} °C, since a house loses heat to the colder side only");
            return ExitCodes.WrongUse;
        }

        if (SettingsSource.Sound(parse, Settings) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        HouseBuild house = settings.House;
        double wind = parse.GetValue(Wind);
        double felt = double.IsNaN(wind) ? HouseLoss.DesignWindMPerS : wind;
        bool drawn = parse.GetValue(Curtain) == NightCurtain.Drawn;
        HouseLoss loss = HouseLoss.Of(house, drawn).InWind(felt, inside - outside);
        double changes = house.AirChangesPerHour * HouseLoss.LeakRatio(felt, inside - outside);
        IReadOnlyList<HouseWhatIf> whatIfs = HouseWhatIf.All(house, inside, outside, felt);
        double watts = loss.Watts(inside, outside);
        double glazing = loss.GlazingWPerK * (inside - outside);
        double leaks = loss.LeakWPerK * (inside - outside);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new
            {
                LossWatts = watts,
                LossBtuPerHour = watts / Customary.BtuPerHour,
                TransmissionWatts = glazing,
                InfiltrationWatts = leaks,
                LossWattsPerKelvin = loss.TotalWPerK,
                AirChangesPerHour = changes,
                WhatIfs = whatIfs,
            });
            return ExitCodes.Done;
        }

        Answer.WriteRows(
            parse,
            [
                ("inside", Show.Both(s => Show.Temperature(inside, s))),
                ("outside", Show.Both(s => Show.Temperature(outside, s))),
                ("glazing", $"{Show.Both(s => Show.Power(glazing, s))}, U·A, curtain {(drawn ? "drawn" : "open")}"),
                ("leaks", $"{Show.Both(s => Show.Power(leaks, s))}, {changes:F2} air changes an hour, {WindText(wind)}"),
                ("loss", Show.Both(s => Show.Power(watts, s))),
                ("per degree", $"{loss.TotalWPerK:F0} W/K ({loss.TotalWPerK / Customary.BtuPerHourF:F0} BTU/h°F)"),
                .. whatIfs.Select(w => ($"with {Words(w.Kind)}", $"{Show.Both(s => Show.Power(w.LossWatts, s))} instead, curtain open otherwise")),
            ]);
        return ExitCodes.Done;
    }

    private static string WindText(double wind) => double.IsNaN(wind)
        ? "as the settings say"
        : $"those of the settings in a wind of {wind:F1} m/s ({wind / Customary.MilePerHour:F0} mph); taken as told for {HouseLoss.DesignWindMPerS:F1} m/s (15 mph)";

    private static string Words(string kind) => kind switch
    {
        "curtain" => "the curtain drawn",
        "secondSkin" => "a second skin",
        "thermalMass" => $"{HouseWhatIf.BarrelsKg:F0} L of water giving {HouseWhatIf.BarrelSwingK:F0} K a night",
        _ => $"the set point {HouseWhatIf.LoweredK:F0} K lower",
    };
}
