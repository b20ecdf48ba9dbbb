using PileController.Control.Decisions;

namespace PileController.Control.Modes;

/// <summary>Chooses the one trigger of a tick from what is known; the table says where it leads.</summary>
internal static class ModeRule
{
    /// <summary>What the choice depends on.</summary>
    internal readonly record struct Facts(
        bool Tripped, bool Servicing, bool ByHand, bool FrostNear, bool FloorNear, bool Recovered, bool WaterAsked, bool AirAsked,
        bool PumpRuns, bool FlowProven);

    /// <summary>True when pump, valve or blower are held by hand.</summary>
    public static bool HeldByHand(HandHold[] hands) => Array.Exists(hands, h => h.Actuator != Actuator.Backup);

    public static Trigger Trigger(Mode mode, in Facts facts)
    {
        if (facts.Tripped && mode != Mode.Tripped)
        {
            return Modes.Trigger.Trip;
        }

        return mode switch
        {
            Mode.Tripped => facts.Tripped ? Modes.Trigger.None : Modes.Trigger.TripsCleared,
            Mode.Servicing => facts.Servicing ? Modes.Trigger.None : Modes.Trigger.ServicingEnded,
            _ when facts.Servicing => Modes.Trigger.ServicingBegun,
            Mode.ByHand => facts.ByHand ? Modes.Trigger.None : Modes.Trigger.HandEnded,
            _ when facts.ByHand => Modes.Trigger.HandTaken,
            Mode.FrostGuard => facts.FrostNear ? Modes.Trigger.None : Modes.Trigger.FrostGone,
            Mode.Standby => facts.FrostNear ? Modes.Trigger.FrostNear
                : facts.FloorNear ? Modes.Trigger.FloorNear
                : facts.WaterAsked ? Modes.Trigger.WaterAsked
                : facts.AirAsked ? Modes.Trigger.AirAsked : Modes.Trigger.None,
            Mode.Recovering => facts.FrostNear ? Modes.Trigger.FrostNear
                : facts.Recovered ? Modes.Trigger.Recovered : Modes.Trigger.None,
            Mode.Priming => facts.FloorNear ? Modes.Trigger.FloorNear
                : !facts.WaterAsked ? Modes.Trigger.DrawEnded
                : facts.FlowProven ? Modes.Trigger.FlowProven : Modes.Trigger.None,
            Mode.Drawing => facts.FloorNear ? Modes.Trigger.FloorNear
                : facts.WaterAsked && !facts.PumpRuns ? Modes.Trigger.WaterAsked
                : facts.FrostNear && !facts.WaterAsked ? Modes.Trigger.FrostNear
                : !facts.WaterAsked && !facts.AirAsked ? Modes.Trigger.DrawEnded : Modes.Trigger.None,
            _ => Modes.Trigger.None,
        };
    }
}
