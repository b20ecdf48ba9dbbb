using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Parts;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>Tells people what a pump does on a loop, or how several compare.</summary>
internal static class PumpWords
{
    public static void Tell(ParseResult parse, PumpAnswer answer, LoopPart loop) => Answer.WriteRows(
        parse,
        [
            ("pump", answer.Name),
            ("curve", $"{Show.Both(s => Show.Length(answer.ShutoffHeadM, s))} shut off, {Show.Both(s => Show.WaterFlow(answer.FreeFlowLitresPerMinute, s))} free; "
                + $"misses a point by {Show.Both(s => Show.Length(answer.LargestMissM, s))} at most"),
            ("flow", answer.FlowLitresPerMinute > 0
                ? Show.Both(s => Show.WaterFlow(answer.FlowLitresPerMinute, s))
                : $"none: {NoFlow(answer, loop)}"),
            ("head", Show.Both(s => Show.Length(answer.HeadM, s))),
            ("electric power", $"{answer.PowerW:F1} W, of which {answer.HydraulicW:F2} W move the water; {PerFlow(answer)}"),
            ("energy", $"{answer.WhPerDay:F0} Wh a day in {answer.HoursPerDay:0.#} h"),
            ("panel and battery", Supply(answer, loop)),
            ("carries air down", $"{(answer.PurgesAir ? "yes" : "no")}, {PipeText.Velocity(answer.VelocityMPerS)} in the widest run"),
            ("once round", answer.FlowLitresPerMinute > 0 ? Show.Time(answer.TransitSeconds!.Value) : "never"),
            .. answer.Throttled.Select(t => ($"valve {100 * t.OpenShare:F0} % open",
                $"{Show.Both(s => Show.WaterFlow(t.FlowLitresPerMinute, s))} at {Show.Both(s => Show.Length(t.HeadM, s))}")),
            ("mind", "a closing valve saves flow, not power: slow the pump instead where it can be slowed"),
            ("caution", WaterCautions.Pump),
        ]);

    public static void Compare(ParseResult parse, IReadOnlyList<PumpAnswer> answers, LoopPart loop)
    {
        Answer.WriteRows(
            parse,
            [
                .. answers.Select(a => (a.Name,
                    $"{Show.Both(s => Show.WaterFlow(a.FlowLitresPerMinute, s)),-28}  {Show.Both(s => Show.Length(a.HeadM, s)),-18}  "
                    + $"{a.PowerW,6:F1} W  {PerFlow(a),-20}  {a.WhPerDay,6:F0} Wh a day  {Supply(a, loop)}")),
                ("caution", WaterCautions.Pump),
            ]);
    }

    private static string NoFlow(PumpAnswer answer, LoopPart loop) =>
        loop.ValveOpen == 0 ? "the valve is shut"
        : answer.PowerW == 0 ? "it does not start at this duty"
        : $"the lift of {Show.Both(s => Show.Length(loop.StaticLiftM, s))} is more than it can give";

    private static string PerFlow(PumpAnswer answer) =>
        answer.WattsPerLitrePerMinute is double watts ? $"{watts:F2} W per L/min" : "no flow";

    private static string Supply(PumpAnswer answer, LoopPart loop) =>
        loop is { PanelWatts: 0, BatteryWattHours: 0 } || answer.PowerW == 0
            ? "none given"
            : $"the panel bears {answer.HoursOnPanel:F1} h a day ({loop.SunHours:0.#} h of full sun), the battery {answer.HoursOnBattery:F1} h in the dark";
}
