using PileController.Control.Decisions;
using PileController.Rigs;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>What the tests hold by hand.</summary>
internal static class Moves
{
    /// <summary>Everything that moves water or air stands; a valve stays open, so that it makes no strokes between runs.</summary>
    public static IReadOnlyList<Move> Rest(PileSettings settings) =>
        [new(Actuator.Pump, 0), .. Valve(settings, 1), .. Blower(settings, 0)];

    /// <summary>Said where the loop may be empty or open while the pump is held at rest.</summary>
    public const string FrostCaution = "In a frost the pump can start all the same: the frost guard outranks every hold. The loop must be filled, or the pump unplugged.";

    /// <summary>
    /// All is off and the valve where it is safe, as when the outputs are locked off: a test that wants no more goes on then. A
    /// valve that is not safe shut is not held there: above a shut one the line stays full.
    /// </summary>
    public static IReadOnlyList<Move> AllOff(PileSettings settings) =>
        [new(Actuator.Pump, 0), .. IsSafeShut(settings) ? Valve(settings, 0) : [], .. Blower(settings, 0), .. settings.Control.BackupFitted ? [new Move(Actuator.Backup, 0)] : Array.Empty<Move>()];

    /// <summary>The pump runs at a duty through an open loop, the blower stands.</summary>
    public static IReadOnlyList<Move> Run(PileSettings settings, double duty) =>
        [new(Actuator.Pump, duty), .. Valve(settings, 1), .. Blower(settings, 0)];

    /// <summary>The valve alone moves.</summary>
    public static IReadOnlyList<Move> ValveAlone(PileSettings settings, double opening, double duty = 0) =>
        [new(Actuator.Pump, duty), .. Valve(settings, opening), .. Blower(settings, 0)];

    /// <summary>Whether a motor valve is fitted.</summary>
    public static bool HasValve(PileSettings settings) => settings.Loop.ValveTravelSeconds > 0;

    private static bool IsSafeShut(PileSettings settings) => settings.Rig.Simulated || settings.Rig.Hardware.Valve.Safe == ValveSafe.Shut;

    private static IEnumerable<Move> Valve(PileSettings settings, double opening) => HasValve(settings) ? [new(Actuator.Valve, opening)] : [];

    private static IEnumerable<Move> Blower(PileSettings settings, double duty) => settings.Control.BlowerFitted ? [new(Actuator.Blower, duty)] : [];
}
