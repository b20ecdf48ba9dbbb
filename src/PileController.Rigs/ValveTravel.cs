using PileController.Control.Regulation;

namespace PileController.Rigs;

/// <summary>
/// Where a motor valve that is driven for a time is to be driven to, from where it is believed to stand. One rule for the
/// simulated valve and the real one. End switches set the belief right whenever the valve arrives at an end; without them it is
/// driven against its nearer stop once a day.
/// </summary>
internal static class ValveTravel
{
    /// <summary>How much further than believed it is driven when it is to find its stop, share of the whole way.</summary>
    public const double OverTravel = 0.2;

    /// <summary>Time after which its place is no longer believed without an end switch, s.</summary>
    public const double HomingSeconds = 86_400;

    /// <summary>Where it is to be driven to; below 0 or above 1 to find a stop.</summary>
    /// <param name="target">Where it is wanted, 0 (shut) to 1 (open).</param>
    /// <param name="believed">Where it is believed to stand.</param>
    /// <param name="sinceHomedSeconds">Time since it was last surely at a stop, s.</param>
    /// <param name="feedback">What it tells of where it stands.</param>
    /// <param name="arrived">Whether its end switch says that it stands at the end where it is wanted.</param>
    public static double Aim(double target, double believed, double sinceHomedSeconds, ValveFeedback feedback, bool arrived)
    {
        if (feedback == ValveFeedback.EndSwitches)
        {
            // It is driven until the switch reports.
            return arrived || target is > 0 and < 1 ? target : target + Math.CopySign(OverTravel, target - 0.5);
        }

        if (sinceHomedSeconds < HomingSeconds)
        {
            return target;
        }

        return believed < 0.5 ? -OverTravel : 1 + OverTravel;
    }

    /// <summary>Whether a valve driven so far stands at a stop for certain.</summary>
    /// <param name="believed">Where it is believed to stand.</param>
    /// <param name="aim">Where it was driven to.</param>
    public static bool IsAtStop(double believed, double aim) => believed == aim && aim is < 0 or > 1;
}
