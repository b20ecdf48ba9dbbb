using PileController.Control.Allocation;
using PileController.Control.Interlocks;
using PileController.Control.Means;
using PileController.Control.Modes;

namespace PileController.Control.Decisions;

/// <summary>
/// Says when backup heat runs: the house is below its minimum and what the heap may give does not keep the frost out.
/// </summary>
internal static class BackupRule
{
    /// <summary>The house must come back this far above its minimum before backup heat goes off, K.</summary>
    public const double ReleaseKelvin = 0.5;

    /// <summary>Whether backup heat is to run.</summary>
    /// <param name="settings">What is known of the house.</param>
    /// <param name="mode">The mode from this tick on.</param>
    /// <param name="grant">What the heap may give.</param>
    /// <param name="houseC">House air, °C; null when its probe cannot be believed.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="hands">What is held by hand.</param>
    /// <param name="effect">What the interlocks do.</param>
    /// <param name="ran">Whether it ran the tick before.</param>
    public static bool Of(
        ControlSettings settings, Mode mode, in Grant grant, double? houseC, double outsideC, HandHold[] hands,
        in InterlockRule.Effect effect, bool ran)
    {
        if (!settings.BackupFitted || mode is Mode.Tripped or Mode.Servicing || effect.HoldBackup)
        {
            return false;
        }

        if (HandRule.Held(hands, Actuator.Backup) is { } held)
        {
            return held > 0.5;
        }

        // Nothing is heated unattended by a probe that cannot be believed; the grower is warned of it instead.
        if (houseC is not { } house)
        {
            return false;
        }

        if (ran)
        {
            return house < settings.HouseMinimumC + ReleaseKelvin;
        }

        double covered = mode is Mode.Standby or Mode.Priming or Mode.Drawing ? grant.TotalW : 0;
        return house < settings.HouseMinimumC && covered < WantRule.FrostWatts(settings, house, outsideC, 0);
    }
}
