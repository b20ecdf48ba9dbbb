using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Rigs;

namespace PileController.Settings.Checks;

/// <summary>What a real rig cannot do without.</summary>
internal static class HardwareChecks
{
    public static readonly Check[] All =
    [
        Check.That(
            "rig.hardware.dutyPeriod", [],
            s => s.Rig.Hardware.DutyPeriodSeconds is 0 || (s.Rig.Hardware.DutyPeriodSeconds >= 10 && double.IsInteger(s.Rig.Hardware.DutyPeriodSeconds))
                ? null
                : "0 s, or whole seconds from 10 s to 40 s",
            s => $"{s.Rig.Hardware.DutyPeriodSeconds:G6} s"),
        OnHardware(
            "rig.hardware.pumpPin", ["rig.hardware.pumpPin", "rig.hardware.pump.drive"],
            s => s.Rig.Hardware.PumpPin is null && s.Rig.Hardware.Pump.Drive == LoadDrive.Line, "the line of the pump, 0 to 127"),
        OnHardware(
            "control.pump.drive", ["control.pump.drive", "rig.hardware.dutyPeriod", "rig.hardware.pump.drive"], RelayToldDuties,
            "onOff, or valve, while rig.hardware.dutyPeriod is 0 s: a relay stays off below half a duty, and the pump would be tripped for want of flow",
            "\"duty\""),
        OnHardware(
            "rig.hardware.dutyPeriod", ["rig.hardware.dutyPeriod", "control.tick", "interlocks.noFlowTime", "control.pump.drive", "rig.hardware.pump.drive"],
            s => TellsDuties(s) && s.Rig.Hardware.DutyPeriodSeconds > ProvenSeconds(s),
            s => $"at most {ProvenSeconds(s):G6} s, the ticks that interlocks.noFlowTime takes, or a longer interlocks.noFlowTime: a pump that is off for longer between two ons would be tripped for want of flow",
            s => $"{s.Rig.Hardware.DutyPeriodSeconds:G6} s"),
        OnHardware(
            "rig.hardware.blowerPin", ["rig.hardware.blowerPin", "rig.hardware.blower.drive", "control.told.blowerFitted"],
            s => s.Control.BlowerFitted && s.Rig.Hardware.BlowerPin is null && s.Rig.Hardware.Blower.Drive == LoadDrive.Line,
            "the line of the blower, 0 to 127, or control.told.blowerFitted false"),
        OnHardware(
            "rig.probes", ["rig.probes"], s => !Fitted(s, Channel.Flow, Channel.PumpPower),
            "a probe for flow or pumpPower among them, to prove that the pump runs", "without proof of flow"),
        OnHardware(
            "rig.probes", ["rig.probes"], s => !Fitted(s, Channel.HeapTurns, Channel.HeapCore),
            "a probe for heapTurns or heapCore among them", "without a heap probe"),
        OnHardware(
            "rig.probes", ["rig.probes"], s => !Fitted(s, Channel.House),
            "a probe for house among them", "without a house probe"),
        OnHardware(
            "rig.hardware.standingWater", ["rig.hardware.standingWater", "loop.lineLength", "loop.lineExposure"],
            s => s.Rig.Hardware.StandingWater == StandingWater.Unguarded && LinesFreeze(s),
            "drainsBack, antifreeze or frostDevice, since at a fault all outputs go off and water would freeze in lines that follow the air outside",
            "unguarded"),
    ];

    // Lines below the frost's reach follow the air outside by no more than this (common practice, no source).
    private const double SafeExposure = 0.1;

    /// <summary>Whether lines lie where frost reaches them.</summary>
    public static bool LinesFreeze(PileSettings settings) => settings.Loop.LineLengthM > 0 && settings.Loop.LineExposure > SafeExposure;

    private static bool RelayToldDuties(PileSettings settings) => TellsDuties(settings) && settings.Rig.Hardware.DutyPeriodSeconds is 0;

    private static bool TellsDuties(PileSettings settings) =>
        settings.Control.Drive == PumpDrive.Duty && settings.Rig.Hardware.Pump.Drive == LoadDrive.Line;

    // So many whole ticks, two at least, have to be without flow: a period within them holds an on.
    private static double ProvenSeconds(PileSettings settings) =>
        Math.Max(2, Math.Ceiling(settings.Control.Limits.NoFlowSeconds / settings.Control.TickSeconds)) * settings.Control.TickSeconds;

    private static bool Fitted(PileSettings settings, params IReadOnlyList<Channel> anyOf) =>
        settings.Rig.Probes.Any(p => anyOf.Contains(p.Channel));

    /// <summary>A check of what only a real rig cannot do without.</summary>
    public static Check OnHardware(
        string path, IReadOnlyList<string> paths, Predicate<PileSettings> broken, string allowed, string given = "none") =>
        OnHardware(path, paths, broken, _ => allowed, _ => given);

    private static Check OnHardware(
        string path, IReadOnlyList<string> paths, Predicate<PileSettings> broken, Func<PileSettings, string> allowed, Func<PileSettings, string> given) =>
        new(["rig.kind", .. paths], (s, _) =>
            !s.Rig.Simulated && broken(s) ? [new Finding(path, given(s), $"{allowed(s)} (a hardware rig)")] : []);
}
