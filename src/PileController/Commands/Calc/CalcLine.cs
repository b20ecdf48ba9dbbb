using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;
using PileController.Settings.Kinds;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc line: what an insulated or buried line loses, and when still water in it freezes.</summary>
internal static class CalcLine
{
    private const double FoamWPerMK = 0.035;
    private const double ShelteredWPerM2K = 10;
    private const double DampSoilWPerMK = 1.5;

    private static readonly Option<PipeSize?> Tube = Ask.Kind("--tube", "The tube by name, words in any order.", new TubeKind()).Needed();

    private static readonly Option<double> Length = Ask.Quantity("--length", "Its length.", "m", Dimension.Length, 0.01, 5000).Needed();

    private static readonly Option<double> Insulation = Ask.Quantity(
        "--insulation", "Thickness of the insulation all round, 0 m for none.", "m", Dimension.Length, 0, 0.5).Needed();

    private static readonly Option<double> Flow = Ask.Quantity("--flow", "Flow of water.", "L/min", Dimension.Flow, 0.001, 1000).Needed();

    private static readonly Option<double> WaterIn = Ask.Quantity(
        "--water", "Water entering.", "°C", Dimension.Temperature, Water.LowestC, Water.HighestC).Needed();

    private static readonly Option<double> Outside = Ask.Quantity(
        "--outside", "Air outside, or the ground's surface over a buried line.", "°C", Dimension.Temperature, -60, Water.HighestC).Needed();

    private static readonly Option<double> Conductivity = Ask.Quantity(
        "--insulation-conductivity", "Of the insulation; 0.035 W/mK, foam (from memory), unless given.", "W/mK", Dimension.Conductivity, 0.005, 5)
        .Unless(FoamWPerMK);

    private static readonly Option<double> Surface = Ask.Quantity(
        "--surface", "Film of a line in the open; 10 W/m2K, sheltered, unless given; 25 in wind (common practice, no source).",
        "W/m2K", Dimension.Transmittance, 1, 200).Unless(ShelteredWPerM2K);

    private static readonly Option<double> Wind = Ask.Quantity(
        "--wind", "Wind at a line in the open, instead of --surface: film 5.7 + 3.8 W/m2K for each m/s (from memory).", "m/s", Dimension.Speed, 0, 60)
        .Unless(-1);

    private static readonly Option<double> Buried = Ask.Quantity(
        "--buried", "Depth of its axis under the ground's surface; in the open unless given.", "m", Dimension.Length, 0.005, 20).Unless(0);

    private static readonly Option<double> Soil = Ask.Quantity(
        "--soil-conductivity", "Of the ground; 1.5 W/mK, damp soil (from memory), unless given.", "W/mK", Dimension.Conductivity, 0.05, 10)
        .Unless(DampSoilWPerMK);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "line", "Heat lost by a line, bare, insulated or buried, and minutes until water that stands in it reaches freezing.",
            "PileController calc line --tube \"PEX 1/2 in\" --length \"40 ft\" --insulation \"1 in\" --flow \"1 gal/min\" --water \"110 °F\" --outside \"0 °F\"")
        {
            Tube, Length, Insulation, Flow, WaterIn, Outside, Conductivity, Surface, Wind, Buried, Soil, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        PipeSize tube = parse.GetRequiredValue(Tube)!;
        double insulation = parse.GetRequiredValue(Insulation);
        double depth = parse.GetValue(Buried);
        double half = (tube.OuterDiameterM / 2) + insulation;
        double wind = parse.GetValue(Wind);
        string? wrong = depth > 0 && depth <= half
            ? $"--buried is {Show.Both(s => Show.Length(depth, s))}, within the line itself; allowed: more than {Show.Both(s => Show.Length(half, s))}, half of pipe and insulation"
            : wind >= 0 && depth > 0 ? "--wind is given for a line that is --buried; allowed: one of them"
            : wind >= 0 && parse.GetResult(Surface) is { Implicit: false } ? "--wind is given beside --surface; allowed: one of them"
            : null;
        if (wrong is not null)
        {
            parse.InvocationConfiguration.Error.WriteLine(wrong);
            return ExitCodes.WrongUse;
        }

        double film = wind >= 0 ? Surroundings.WindFilmWPerM2K(wind) : parse.GetValue(Surface);
        InsulatedLine line = new(
            tube.InnerDiameterM, tube.OuterDiameterM, tube.WallWPerMK, insulation, parse.GetValue(Conductivity), film)
        {
            WallJPerM3K = tube.WallJPerM3K,
            Buried = depth > 0 ? new Ground(depth, parse.GetValue(Soil)) : null,
        };
        LineAnswer answer = Work(
            line, parse.GetRequiredValue(Length), parse.GetRequiredValue(Flow), parse.GetRequiredValue(WaterIn), parse.GetRequiredValue(Outside));
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, answer);
            return ExitCodes.Done;
        }

        Tell(parse, answer, depth > 0);
        return ExitCodes.Done;
    }

    private static LineAnswer Work(InsulatedLine line, double lengthM, double flow, double waterC, double outsideC)
    {
        double conductance = lengthM / line.ResistanceMKPerW;
        double capacityRate = Water.MassFlowKgPerS(flow, waterC) * Water.SpecificHeatJPerKgK(waterC);
        double outletC = SoakedRun.OutletC(waterC, outsideC, conductance, capacityRate);
        return new LineAnswer(
            capacityRate * (waterC - outletC), outletC, Minutes(line.SecondsToFreezing(waterC, outsideC)),
            Minutes(line.SecondsToFreezing(Math.Max(outletC, 0), outsideC)), 1 / line.ResistanceMKPerW, line.SurfaceC(waterC, outsideC), outletC < 0);
    }

    private static double? Minutes(double seconds) => double.IsPositiveInfinity(seconds) ? null : seconds / 60;

    private static void Tell(ParseResult parse, LineAnswer answer, bool buried) => Answer.WriteRows(
        parse,
        [
            ("loss", Show.Both(s => Show.Power(answer.LossWatts, s))),
            ("loss per length", $"{answer.LossWPerMK:F3} W/mK ({answer.LossWPerMK / Customary.BtuPerHourFootF:F3} BTU/hft°F)"),
            ("outlet", answer.FreezesRunning
                ? "ice: at this flow the water freezes before the end"
                : Show.Both(s => Show.Temperature(answer.OutletC, s))),
            ("outer surface", $"{Show.Both(s => Show.Temperature(answer.SurfaceC, s))} at the inlet"),
            ("still water freezes", answer.MinutesToFreezeStill is double minutes
                ? $"after {Show.Time(60 * minutes)} at the inlet, {Show.Time(60 * answer.MinutesToFreezeStillAtOutlet!.Value)} at the outlet"
                : "never: it is not below freezing outside"),
            .. buried ? [("mind", "steady ground: the earth's own warmth holds frost back longer than this")] : Array.Empty<(string, string)>(),
            ("caution", WaterCautions.Frost),
        ]);

    private sealed record LineAnswer(
        double LossWatts, double OutletC, double? MinutesToFreezeStill, double? MinutesToFreezeStillAtOutlet,
        double LossWPerMK, double SurfaceC, bool FreezesRunning);
}
