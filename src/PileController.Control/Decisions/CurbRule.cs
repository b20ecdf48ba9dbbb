using PileController.Control.Allocation;
using PileController.Control.Interlocks;
using PileController.Control.Modes;

namespace PileController.Control.Decisions;

/// <summary>Names the one thing that now limits the grant.</summary>
internal static class CurbRule
{
    public static Curb Of(Mode mode, in Grant grant, in Outputs outputs, in InterlockRule.Effect effect)
    {
        if (mode is Mode.Tripped)
        {
            return Curb.Interlock;
        }

        if (mode is Mode.ByHand or Mode.Servicing)
        {
            return Curb.ByHand;
        }

        if (effect.HoldWater && grant.WantW > 0)
        {
            return InterlockTable.All[effect.FirstHoldingWater].Source == Signal.Battery ? Curb.Power : Curb.Interlock;
        }

        return mode switch
        {
            Mode.FrostGuard => Curb.Interlock,
            Mode.Priming => Curb.Priming,
            Mode.Recovering => Curb.Floor,
            _ when grant.Curb is Curb.None && grant.TotalW > 0 && outputs.PumpDuty <= 0 && outputs.BlowerDuty <= 0 => Curb.Rest,
            _ => grant.Curb,
        };
    }
}
