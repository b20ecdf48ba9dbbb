using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc duct: a closed metal duct in the heap.</summary>
internal static class CalcDuct
{
    // Middle of the published range for such blends, 1.36 to 4.08 MJ/(m³·K) (Ahn, Sauer, Richard, Glanville 2009).
    private const double BedJPerM3K = 2.5e6;
    private const double SecondsPerDay = 86_400;

    private static readonly Option<double> Diameter =
        Ask.Quantity("--diameter", "Diameter of the duct.", "m", Dimension.Length, 0.03, 1).Needed();

    private static readonly Option<double> Length =
        Ask.Quantity("--length", "Length in the heap.", "m", Dimension.Length, 0.1, 500).Needed();

    private static readonly Option<double> Flow = AirOptions.Flow();

    private static readonly Option<double> Inlet = AirOptions.Inlet();

    private static readonly Option<double> Heap = AirOptions.Heap();

    private static readonly Option<double> BedConductivity = Ask.Quantity(
        "--bed-conductivity", "Conductivity of the compost round the duct; 0.4 W/mK unless given.", "W/mK", Dimension.Conductivity, 0.05, 2).Unless(0.4);

    private static readonly Option<double> After = Ask.Quantity(
        "--after", "How long air has been drawn, since the bed round the duct cools first; 30 d unless given.", "d", Dimension.Time, 1, 365).Unless(30);

    private static readonly Option<double> Efficiency = Ask.Quantity(
        "--blower-efficiency", "Share of the blower's electricity that becomes air power; 30 % unless given (common practice, no source).", "%", Dimension.Share, 1, 90).Unless(30);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "duct", "Heat that air takes from the heap in a closed metal duct: sensible heat only, straight duct only.",
            "PileController calc duct --diameter \"4 in\" --length \"40 ft\" --flow \"60 ft3/min\" --inlet \"50 °F\" --heap \"140 °F\"")
        {
            Diameter, Length, Flow, Inlet, Heap, BedConductivity, After, Efficiency, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        double flow = parse.GetRequiredValue(Flow) / 3600;
        double inlet = parse.GetRequiredValue(Inlet);
        double heap = parse.GetRequiredValue(Heap);
        double diameter = parse.GetRequiredValue(Diameter);
        double length = parse.GetRequiredValue(Length);
        double conductivity = parse.GetValue(BedConductivity);
        double days = parse.GetValue(After);
        double soonest = Surroundings.LineSourceFromSeconds(diameter / 2, conductivity, BedJPerM3K) / SecondsPerDay;
        if (days < soonest)
        {
            parse.InvocationConfiguration.Error.WriteLine(
                $"--after is {days:0.##} d; allowed: at least {soonest:F1} d for a duct as wide as that, since before the bed does not answer as to a line");
            return ExitCodes.WrongUse;
        }

        double bed = Surroundings.LineSourceWPerMK(diameter / 2, conductivity, BedJPerM3K, days * SecondsPerDay);
        ClosedDuct duct = new(length, diameter);
        double watts = duct.HeatWatts(flow, inlet, heap, bed);
        double outlet = inlet + (watts / ClosedDuct.CapacityRateWPerK(flow, inlet));
        double mean = (inlet + outlet) / 2;
        double mass = flow * MoistAir.DensityKgPerM3(inlet, 0);
        DuctRun run = new(length, diameter);
        DuctAnswer answer = new(
            outlet, watts, run.LossPa(mass, mean), watts / Customary.BtuPerHour,
            run.BlowerWatts(mass, mean, parse.GetValue(Efficiency) / 100), run.VelocityMPerS(mass, mean), run.Reynolds(mass, mean), bed);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, answer);
            return ExitCodes.Done;
        }

        Answer.WriteRows(
            parse,
            ("inlet", $"{Show.Both(s => Show.AirFlow(flow, s))} at {Show.Both(s => Show.Temperature(inlet, s))}"),
            ("outlet", Show.Both(s => Show.Temperature(outlet, s))),
            ("draw", Show.Both(s => Show.Power(watts, s))),
            ("bed", $"{bed:F2} W/mK, what it still gives a metre of duct after {days:0.#} days"),
            ("speed", $"{answer.VelocityMPerS:F1} m/s ({answer.VelocityMPerS / Customary.FootPerMinute:F0} ft/min)"),
            ("pressure drop", $"{answer.PressureDropPa:F1} Pa ({answer.PressureDropPa / Customary.InchOfWater:F3} inH2O), bends not counted"),
            ("blower", $"{answer.BlowerWatts:F1} W at {parse.GetValue(Efficiency):0.#} % efficiency"));
        return ExitCodes.Done;
    }

    private sealed record DuctAnswer(
        double OutletC, double DrawWatts, double PressureDropPa, double DrawBtuPerHour,
        double BlowerWatts, double VelocityMPerS, double Reynolds, double BedWattsPerMetreKelvin);
}
