using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Parts;
using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;
using PileController.Settings.Kinds;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc pipe: what a flow costs in a tube.</summary>
internal static class CalcPipe
{
    private static readonly Option<PipeSize?> Tube = Ask.Kind("--tube", "The tube by name, words in any order.", new TubeKind()).Needed();

    private static readonly Option<double> Length = Ask.Quantity("--length", "Its length.", "m", Dimension.Length, 0.01, 5000).Needed();

    private static readonly Option<double> Flow = Ask.Quantity("--flow", "Flow of water.", "L/min", Dimension.Flow, 0.001, 1000).Needed();

    private static readonly Option<double> Temperature = Ask.Quantity(
        "--temp", "Temperature of the water.", "°C", Dimension.Temperature, Water.LowestC, Water.HighestC).Needed();

    private static readonly Option<FittingCount[]> Fittings = Ask.Several("--fitting", "Fittings in it.", new FittingKind());

    private static readonly Option<double> Turns = Ask.Quantity(
        "--turns", "Diameter of the turns it is wound in; straight unless given.", "m", Dimension.Length, 0.1, 50).Unless(0);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "pipe", "Speed, friction and pressure lost by a flow of water in a tube with its fittings.",
            "PileController calc pipe --tube \"PEX 1/2 in\" --length \"300 ft\" --flow \"1 gal/min\" --temp \"60 °F\" --fitting elbow:6")
        {
            Tube, Length, Flow, Temperature, Fittings, Turns, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        PipeSize tube = parse.GetRequiredValue(Tube)!;
        double length = parse.GetRequiredValue(Length);
        double flow = parse.GetRequiredValue(Flow);
        double waterC = parse.GetRequiredValue(Temperature);
        double bore = tube.InnerDiameterM;
        PipeRun plain = new(length, bore) { TurnDiameterM = parse.GetValue(Turns) };
        FittingCount[] fittings = parse.GetValue(Fittings)!;
        PipeRun whole = plain with { FittingK = fittings.Sum(fitting => fitting.LossK(bore)) };
        double loss = whole.LossPa(flow, waterC);
        double friction = plain.LossPa(flow, waterC);
        PipeAnswer answer = new(
            Physics.Hydraulics.Flow.VelocityMPerS(flow, bore), plain.Reynolds(flow, waterC), plain.FrictionFactor(flow, waterC),
            loss, whole.HeadM(flow, waterC), friction, loss - friction, whole.FittingK,
            AirPurge.Purges(Physics.Hydraulics.Flow.VelocityMPerS(flow, bore)), AirPurge.LeastFlowLitresPerMinute(bore),
            PipeText.PsiPer100Feet(friction, length), plain.Litres, plain.TransitSeconds(flow), bore);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, answer);
            return ExitCodes.Done;
        }

        Answer.WriteRows(
            parse,
            [
                ("tube", $"{tube.Name}, bore {1000 * bore:F2} mm ({bore / (double)Factors.Inch:F3} in)"),
                ("speed", PipeText.Velocity(answer.VelocityMPerS)),
                ("Reynolds number", $"{answer.Reynolds:F0} ({Regime(answer.Reynolds)})"),
                ("friction factor", $"{answer.FrictionFactor:F4} (Darcy)"),
                ("friction", $"{PipeText.Pressure(friction)}, {answer.PsiPer100Ft:F2} psi per 100 ft"),
                .. fittings.Select(f => ($"{f.Count} × {f.Fitting.Name}", $"{f.LossK(bore):F2} velocity heads ({f.Fitting.Source})")),
                ("fittings", $"{PipeText.Pressure(answer.FittingLossPa)}, {whole.FittingK:F2} velocity heads"),
                ("pressure drop", PipeText.Pressure(loss)),
                ("head", Show.Both(s => Show.Length(answer.HeadM, s))),
                ("carries air down", PipeText.Purge(answer.VelocityMPerS, bore)),
                ("water in it", $"{Show.Both(s => Show.Volume(answer.HoldsLitres, s))}, through in {Show.Time(answer.TransitSeconds)}"),
            ]);
        return ExitCodes.Done;
    }

    private static string Regime(double reynolds) => reynolds switch
    {
        < 2300 => "laminar",
        < 4000 => "in between: here no formula is sure to 20 %",
        _ => "turbulent",
    };

    private sealed record PipeAnswer(
        double VelocityMPerS, double Reynolds, double FrictionFactor, double PressureDropPa, double HeadM,
        double FrictionLossPa, double FittingLossPa, double FittingK, bool PurgesAir, double LeastPurgeFlowLitresPerMinute,
        double PsiPer100Ft, double HoldsLitres, double TransitSeconds, double InnerDiameterM);
}
