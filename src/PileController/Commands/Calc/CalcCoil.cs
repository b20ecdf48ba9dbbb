using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;
using PileController.Settings.Kinds;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc coil: what buried turns of pipe draw, and how it falls while they draw.</summary>
internal static class CalcCoil
{
    private const double DefaultDays = 30;
    private const double SecondsPerDay = 86_400;

    private static readonly (string Name, double Days)[] Moments =
        [("first hour", 1.0 / 24), ("first day", 1), ("a week", 7), ("a month", 30), ("four months", 120)];

    private static readonly Option<PipeSize?> Tube = Ask.Kind("--tube", "The tube by name, words in any order.", new TubeKind()).Needed();

    private static readonly Option<double> Length = Ask.Quantity("--length", "Length buried.", "m", Dimension.Length, 0.01, 5000).Needed();

    private static readonly Option<double> Flow = Ask.Quantity("--flow", "Flow of water.", "L/min", Dimension.Flow, 0.001, 1000).Needed();

    private static readonly Option<double> Inlet = Ask.Quantity(
        "--inlet", "Water entering.", "°C", Dimension.Temperature, Water.LowestC, Water.HighestC).Needed();

    private static readonly Option<double> Heap = Ask.Quantity(
        "--heap", "The heap away from the pipe.", "°C", Dimension.Temperature, Water.LowestC, Water.HighestC).Needed();

    private static readonly Option<double> Bed = Ask.Quantity(
        "--bed-conductivity", "Conductivity of the heap; 0.4 W/mK, moist chips, unless given.", "W/mK", Dimension.Conductivity, 0.02, 5)
        .Unless(BuriedCoil.MoistChipsWPerMK);

    private static readonly Option<double> After = Ask.Quantity(
        "--after", "Time of steady draw after which the figures hold; 30 d unless given.", "d", Dimension.Time, 1.0 / 1440, 1000).Unless(DefaultDays);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "coil", "Heat that turns of pipe in a heap draw after some time of steady draw: 30 days unless told otherwise.",
            "PileController calc coil --tube \"PEX 1/2 in\" --length \"300 ft\" --flow \"1 gal/min\" --inlet \"95 °F\" --heap \"140 °F\"")
        {
            Tube, Length, Flow, Inlet, Heap, Bed, After, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        BuriedCoil coil = new(parse.GetRequiredValue(Tube)!, parse.GetRequiredValue(Length), parse.GetValue(Bed));
        double flow = parse.GetRequiredValue(Flow);
        double inletC = parse.GetRequiredValue(Inlet);
        double heapC = parse.GetRequiredValue(Heap);
        double days = parse.GetValue(After);
        double soonest = coil.FromSeconds / SecondsPerDay;
        if (days < soonest)
        {
            parse.InvocationConfiguration.Error.WriteLine(
                $"--after is {Show.Time(days * SecondsPerDay)}; allowed: at least {Show.Time(coil.FromSeconds)} for this tube and bed, since before the bed does not answer as to a line");
            return ExitCodes.WrongUse;
        }

        (string Name, double Days)[] moments = [.. Moments.Where(m => m.Days >= soonest)];
        CoilDraw At(double afterDays) => coil.After(flow, inletC, heapC, afterDays * SecondsPerDay);
        CoilDraw draw = At(days);
        double reach = coil.ReachM(days * SecondsPerDay);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new CoilAnswer(
                draw.OutletC, draw.DrawWatts, draw.Effectiveness, draw.Ntu, days, draw.FilmMKPerW, draw.WallMKPerW, draw.BedMKPerW, reach,
                [.. moments.Select(m => new MomentAnswer(m.Days, At(m.Days).OutletC, At(m.Days).DrawWatts))]));
            return ExitCodes.Done;
        }

        Answer.WriteRows(
            parse,
            [
                ("after", $"{Show.Time(days * SecondsPerDay)} of steady draw"),
                ("outlet", Show.Both(s => Show.Temperature(draw.OutletC, s))),
                ("draw", Show.Both(s => Show.Power(draw.DrawWatts, s))),
                ("effectiveness", $"{draw.Effectiveness:F3} (NTU {draw.Ntu:F3})"),
                ("resistance", $"film {draw.FilmMKPerW:F3}, wall {draw.WallMKPerW:F3}, bed {draw.BedMKPerW:F3} m·K/W: {Most(draw)}"),
                .. moments.Select(m => ($"draw, {m.Name}", Line(At(m.Days)))),
                ("mind", $"by now the cold reaches {Show.Both(s => Show.Length(reach, s))} into the bed: turns nearer together share it and give less; "
                    + "over the season the heap gives no more than it makes"),
                ("caution", WaterCautions.Warm(draw.OutletC)),
            ]);
        return ExitCodes.Done;
    }

    private static string Line(CoilDraw draw) =>
        $"{Show.Both(s => Show.Power(draw.DrawWatts, s))}, outlet {Show.Both(s => Show.Temperature(draw.OutletC, s))}";

    private static string Most(CoilDraw draw) => draw.BedMKPerW > draw.FilmMKPerW + draw.WallMKPerW
        ? "the bed is the limit, so length and moisture matter, the pipe hardly"
        : "the pipe is the limit";

    private sealed record CoilAnswer(
        double OutletC, double DrawWatts, double Effectiveness, double Ntu, double AfterDays,
        double FilmMKPerW, double WallMKPerW, double BedMKPerW, double ColdReachM, IReadOnlyList<MomentAnswer> Fading);

    private sealed record MomentAnswer(double AfterDays, double OutletC, double DrawWatts);
}
