using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Regulation;

namespace PileController.Control.Decisions;

/// <summary>From mode and wish to outputs: what a person holds comes over the wish, and the interlocks over both.</summary>
internal static class OutputRule
{
    // Enough to move the water in the lines within minutes, and no more.
    private const double GuardDuty = 0.4;

    // Opening that lets enough through a throttling valve to move the water in the lines.
    private const double GuardOpening = 0.2;

    /// <summary>The outputs of a tick.</summary>
    /// <param name="settings">What is fitted.</param>
    /// <param name="mode">The mode from this tick on.</param>
    /// <param name="servicing">Whether somebody works on the rig.</param>
    /// <param name="wish">What the regulators ask for.</param>
    /// <param name="hands">What is held by hand.</param>
    /// <param name="effect">What the interlocks do.</param>
    /// <param name="backup">Whether backup heat runs.</param>
    /// <param name="before">What the actuators were told the tick before.</param>
    /// <param name="restedSeconds">How long the pump has stood, s; 0 while it runs.</param>
    public static Outputs Of(
        ControlSettings settings, Mode mode, bool servicing, in Outputs wish, HandHold[] hands, in InterlockRule.Effect effect,
        bool backup, in Outputs before, double restedSeconds)
    {
        // A trip may end while somebody works on the rig: the lock holds from the first tick, whatever the mode.
        if (servicing || mode is Mode.Tripped or Mode.Servicing)
        {
            return Outputs.Safe;
        }

        double rest = Resting(settings, before, restedSeconds);
        Outputs outputs = mode switch
        {
            Mode.Priming or Mode.Drawing => wish with { ValveOpening = wish.PumpDuty > 0 ? wish.ValveOpening : rest },
            Mode.FrostGuard => Guard(settings, before),
            Mode.ByHand => Hold(hands),
            _ => new Outputs(0, rest, 0, false),
        };
        double pump = effect.HoldWater ? 0 : outputs.PumpDuty;
        double valve = effect.HoldWater ? 0 : outputs.ValveOpening;
        double blower = effect.HoldAir || !settings.BlowerFitted ? 0 : outputs.BlowerDuty;
        if (effect.GuardFrost)
        {
            Outputs guard = Guard(settings, before);
            valve = pump > 0 && settings.Drive == PumpDrive.Valve ? Math.Max(valve, LoopCurve.LeastValveOpening) : guard.ValveOpening;
            pump = Math.Max(pump, guard.PumpDuty);
        }

        // A relay knows no part of its duty.
        pump = settings.Drive == PumpDrive.OnOff && pump > 0 ? 1 : pump;
        return new Outputs(pump, valve, blower, backup);
    }

    /// <summary>Remembers what was told, and since when each runs or rests; a start in <paramref name="mode"/> is counted where it draws.</summary>
    public static RegulatorMemory Remember(
        in RegulatorMemory memory, in RegulatorMemory before, in Outputs outputs, Mode mode, long now)
    {
        bool draws = mode is Mode.Priming or Mode.Drawing;
        bool pump = outputs.PumpDuty > 0;
        bool blower = outputs.BlowerDuty > 0;
        return memory with
        {
            PumpDuty = outputs.PumpDuty,
            BlowerDuty = outputs.BlowerDuty,
            ValveOpening = outputs.ValveOpening,
            PumpStarts = Math.Min(Allotment.MostStarts, memory.PumpStarts + (draws && pump && before.PumpDuty <= 0 ? 1 : 0)),
            BlowerStarts = Math.Min(Allotment.MostStarts, memory.BlowerStarts + (draws && blower && before.BlowerDuty <= 0 ? 1 : 0)),
            PumpSinceMilliseconds = pump == (before.PumpDuty > 0) ? before.PumpSinceMilliseconds : now,
            BlowerSinceMilliseconds = blower == (before.BlowerDuty > 0) ? before.BlowerSinceMilliseconds : now,
        };
    }

    // A valve that was driven shut at every stop would make as many strokes as the pump makes starts.
    private static double Resting(ControlSettings settings, in Outputs before, double restedSeconds) =>
        settings.ValveShutAfterHours > 0 && restedSeconds >= 3600 * settings.ValveShutAfterHours ? 0 : before.ValveOpening;

    // A throttling valve that stands open enough stays: the guard comes and goes, and each stroke wears it.
    private static Outputs Guard(ControlSettings settings, in Outputs before) => settings.Drive switch
    {
        PumpDrive.OnOff => new Outputs(1, 1, 0, false),
        PumpDrive.Valve => new Outputs(
            PumpRegulator.RunDuty(settings),
            before.ValveOpening >= LoopCurve.LeastValveOpening ? before.ValveOpening : GuardOpening, 0, false),
        _ => new Outputs(Math.Max(GuardDuty, settings.MovingDuty), 1, 0, false),
    };

    // What is not held is off. A pump by hand against a shut valve would run
    // dead-headed, so the valve follows the pump unless it is held itself.
    private static Outputs Hold(HandHold[] hands)
    {
        double pump = HandRule.Held(hands, Actuator.Pump) ?? 0;
        double valve = HandRule.Held(hands, Actuator.Valve) ?? (pump > 0 ? 1 : 0);
        return new Outputs(pump, valve, HandRule.Held(hands, Actuator.Blower) ?? 0, false);
    }
}
