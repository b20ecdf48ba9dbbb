using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Fluids;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc draw: heat a water circuit carries.</summary>
internal static class CalcDraw
{
    private static readonly Option<double> Flow =
        Ask.Quantity("--flow", "Flow as metered.", "L/min", Dimension.Flow, 0, 1000).Needed();

    private static readonly Option<double> Supply = Ask.Quantity(
        "--supply", "Water leaving the heap.", "°C", Dimension.Temperature, Water.LowestC, Water.HighestC).Needed();

    private static readonly Option<double> Return = Ask.Quantity(
        "--return", "Water coming back to the heap.", "°C", Dimension.Temperature, Water.LowestC, Water.HighestC).Needed();

    private static readonly Option<MeterLine> Meter = Ask.Word(
        "--meter", "Line in which the flow meter sits, return unless given.",
        ("return", MeterLine.Return), ("supply", MeterLine.Supply)).Unless(MeterLine.Return);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "draw", "Heat drawn by a flow of water, the meter in the return line unless told otherwise.",
            "PileController calc draw --flow \"1 gal/min\" --supply \"140 °F\" --return \"50 °F\"")
        {
            Flow, Supply, Return, Meter, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        double flow = parse.GetRequiredValue(Flow);
        double supply = parse.GetRequiredValue(Supply);
        double back = parse.GetRequiredValue(Return);
        bool inSupply = parse.GetValue(Meter) == MeterLine.Supply;
        double watts = Water.DrawWatts(flow, inSupply ? supply : back, supply, back);
        double btuPerHour = Conversion.Of(
            watts, UnitTable.Of("W", Dimension.Power), UnitTable.Of("BTU/h", Dimension.Power));
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new { DrawWatts = watts, DrawBtuPerHour = btuPerHour });
            return ExitCodes.Done;
        }

        Answer.WriteRows(
            parse,
            ("flow", $"{Show.Both(s => Show.WaterFlow(flow, s))}, metered in the {(inSupply ? "supply" : "return")} line"),
            ("supply", Show.Both(s => Show.Temperature(supply, s))),
            ("return", Show.Both(s => Show.Temperature(back, s))),
            ("draw", Show.Both(s => Show.Power(watts, s))));
        return ExitCodes.Done;
    }
}
