using PileController.Control.Regulation;
using PileController.Rigs;

namespace PileController.Settings.Checks;

/// <summary>The motor valve of a real rig: wired whole, timed, and safe against frost where it ends up.</summary>
internal static class ValveChecks
{
    private const string Valve = "rig.hardware.valve";

    public static readonly Check[] All =
    [
        Check.That(
            $"{Valve}.shutLine", [$"{Valve}.openLine"],
            s => (Of(s).OpenLine is null) == (Of(s).ShutLine is null) ? null : $"both {Valve}.openLine and shutLine, or neither",
            s => Line(Of(s).ShutLine)),
        Check.That(
            $"{Valve}.shutEndLine", [$"{Valve}.openEndLine"],
            s => (Of(s).OpenEndLine is null) == (Of(s).ShutEndLine is null) ? null : $"both {Valve}.openEndLine and shutEndLine, or neither",
            s => Line(Of(s).ShutEndLine)),
        HardwareChecks.OnHardware(
            $"{Valve}.openLine", [Valve, "control.pump.drive"],
            s => !Of(s).IsFitted && s.Control.Drive == PumpDrive.Valve,
            $"the lines of the valve that control.pump.drive \"valve\" sets the flow by"),
        HardwareChecks.OnHardware(
            "loop.valveTravel", ["loop.valveTravel", Valve],
            s => Of(s).IsFitted && s.Loop.ValveTravelSeconds <= 0,
            "the time the valve takes from shut to open, which its lines are driven by", "0 s"),
        HardwareChecks.OnHardware(
            "control.valve.feedback", ["control.valve.feedback", Valve],
            s => Of(s).IsFitted && s.Control.ValveFeedback == ValveFeedback.EndSwitches && Of(s).OpenEndLine is null,
            $"\"none\", or the inputs {Valve}.openEndLine and shutEndLine", "\"endSwitches\""),
        HardwareChecks.OnHardware(
            "control.valve.feedback", ["control.valve.feedback", Valve],
            s => Of(s).IsFitted && s.Control.ValveFeedback == ValveFeedback.None && Of(s).OpenEndLine is not null,
            $"\"endSwitches\", since {Valve} gives their inputs", "\"none\""),
        HardwareChecks.OnHardware(
            "control.valve.shutAfter", ["control.valve.shutAfter", Valve],
            s => Of(s).IsFitted && s.Control.ValveShutAfterHours > 0 && Of(s).Safe != ValveSafe.Shut,
            $"0 h, or {Valve}.safe \"shut\": with all outputs off the valve does what is safe", "above 0 h"),
        HardwareChecks.OnHardware(
            $"{Valve}.safe", [Valve, "rig.hardware.standingWater", "loop.lineLength", "loop.lineExposure"],
            s => Of(s).IsFitted && !Of(s).Bleeds && Of(s).Safe != ValveSafe.Open
                && s.Rig.Hardware.StandingWater == StandingWater.DrainsBack && HardwareChecks.LinesFreeze(s),
            $"\"open\", or {Valve}.bleeds true: a valve that may stand shut keeps the line above it full, and it freezes",
            "a valve that may stand shut"),
    ];

    private static ValveSettings Of(PileSettings settings) => settings.Rig.Hardware.Valve;

    private static string Line(int? line) => line?.ToString() ?? "none";
}
