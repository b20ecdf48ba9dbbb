using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Regulation;

namespace PileController.Control.Decisions;

/// <summary>From mode and wish to outputs: what a person holds comes over the wish, and the interlocks over both.</summary>
internal static class OutputRule
{
    // Enough to move the water in the lines within minutes, and no more.
    private const double GuardDuty = 0.4;

    public static Outputs Of(
        ControlSettings settings, Mode mode, bool servicing, in Outputs wish, HandHold[] hands, in InterlockRule.Effect effect,
        bool backup)
    {
        // A trip may end while somebody works on the rig: the lock holds from the first tick, whatever the mode.
        if (servicing || mode is Mode.Tripped or Mode.Servicing)
        {
            return Outputs.Safe;
        }

        double guard = Math.Max(GuardDuty, settings.MovingDuty);
        Outputs outputs = mode switch
        {
            Mode.Priming or Mode.Drawing => wish,
            Mode.FrostGuard => new Outputs(guard, 1, 0, false),
            Mode.ByHand => Hold(hands),
            _ => Outputs.Safe,
        };
        double pump = effect.HoldWater ? 0 : outputs.PumpDuty;
        double valve = effect.HoldWater ? 0 : outputs.ValveOpening;
        double blower = effect.HoldAir || !settings.BlowerFitted ? 0 : outputs.BlowerDuty;
        if (effect.GuardFrost)
        {
            pump = Math.Max(pump, guard);
            valve = 1;
        }

        return new Outputs(pump, valve, blower, backup);
    }

    /// <summary>Remembers what was told, and since when each runs or rests.</summary>
    public static RegulatorMemory Remember(
        in RegulatorMemory memory, in RegulatorMemory before, in Outputs outputs, long now) => memory with
        {
            PumpDuty = outputs.PumpDuty,
            BlowerDuty = outputs.BlowerDuty,
            PumpSinceMilliseconds = (outputs.PumpDuty > 0) == (before.PumpDuty > 0) ? before.PumpSinceMilliseconds : now,
            BlowerSinceMilliseconds = (outputs.BlowerDuty > 0) == (before.BlowerDuty > 0) ? before.BlowerSinceMilliseconds : now,
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
