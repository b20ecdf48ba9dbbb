using PileController.Control.Readings;
using PileController.Rigs;

namespace PileController.Settings.Checks;

/// <summary>What a real rig cannot do without.</summary>
internal static class HardwareChecks
{
    public static readonly Check[] All =
    [
        Check.That(
            "rig.hardware.blowerPin", ["rig.hardware.pumpPin"],
            s => s.Rig.Hardware.BlowerPin is int pin && pin == s.Rig.Hardware.PumpPin ? "another line than rig.hardware.pumpPin" : null,
            s => $"{s.Rig.Hardware.BlowerPin}"),
        Check.That(
            "rig.hardware.lampLine", ["rig.hardware.pumpPin", "rig.hardware.blowerPin"],
            s => s.Rig.Hardware.LampLine is int line && (line == s.Rig.Hardware.PumpPin || line == s.Rig.Hardware.BlowerPin)
                ? "another line than rig.hardware.pumpPin and rig.hardware.blowerPin"
                : null,
            s => $"{s.Rig.Hardware.LampLine}"),
        Check.That(
            "rig.hardware.pulseLine", ["rig.hardware.pumpPin", "rig.hardware.blowerPin", "rig.hardware.lampLine"],
            s => s.Rig.Hardware.PulseLine is int line
                && (line == s.Rig.Hardware.PumpPin || line == s.Rig.Hardware.BlowerPin || line == s.Rig.Hardware.LampLine)
                ? "another line than rig.hardware.pumpPin, blowerPin and lampLine"
                : null,
            s => $"{s.Rig.Hardware.PulseLine}"),
        Check.That(
            "rig.hardware.dutyPeriod", [],
            s => s.Rig.Hardware.DutyPeriodSeconds is 0 || (s.Rig.Hardware.DutyPeriodSeconds >= 10 && double.IsInteger(s.Rig.Hardware.DutyPeriodSeconds))
                ? null
                : "0 s, or whole seconds from 10 s to 40 s",
            s => $"{s.Rig.Hardware.DutyPeriodSeconds:G6} s"),
        OnHardware(
            "rig.hardware.pumpPin", ["rig.hardware.pumpPin"],
            s => s.Rig.Hardware.PumpPin is null, "the line of the pump, 0 to 127"),
        OnHardware(
            "rig.hardware.blowerPin", ["rig.hardware.blowerPin", "control.told.blowerFitted"],
            s => s.Control.BlowerFitted && s.Rig.Hardware.BlowerPin is null,
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
            s => s.Rig.Hardware.StandingWater == StandingWater.Unguarded && s.Loop.LineLengthM > 0 && s.Loop.LineExposure > SafeExposure,
            "drainsBack, antifreeze or frostDevice, since at a fault all outputs go off and water would freeze in lines that follow the air outside",
            "unguarded"),
    ];

    // Lines below the frost's reach follow the air outside by no more than this (common practice, no source).
    private const double SafeExposure = 0.1;

    private static bool Fitted(PileSettings settings, params IReadOnlyList<Channel> anyOf) =>
        settings.Rig.Probes.Any(p => anyOf.Contains(p.Channel));

    private static Check OnHardware(
        string path, IReadOnlyList<string> paths, Predicate<PileSettings> broken, string allowed, string given = "none") =>
        new(["rig.kind", .. paths], (s, _) =>
            !s.Rig.Simulated && broken(s) ? [new Finding(path, given, $"{allowed} (a hardware rig)")] : []);
}
