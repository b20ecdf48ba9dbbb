using PileController.Control.Readings;
using static PileController.Alarms.AlarmPriority;

namespace PileController.Alarms.Rows;

/// <summary>Battery and blower.</summary>
internal static class PowerRows
{
    private const double Minute = 60;
    private const double SilentWatts = 0.5;
    private const double StandbyWatts = 2;

    // Its power goes with the cube of its duty: below this its meter tells little from nothing.
    private const double TurningDuty = 0.5;

    private const string ChargeIt = "Free the panel of snow, look at its cable and fuse, charge the battery. A lead battery gives off explosive gas while it is charged: air, no sparks; goggles for its acid.";

    public static IEnumerable<AlarmRow> Of(AlarmPlace place)
    {
        yield return new("batteryEmpty", "The battery is nearly empty", High, AlarmGroup.Power, place.Interlock("batteryEmpty"))
        {
            Cause = "Days without sun, snow on the panel, a blown fuse, or a battery at its end.",
            Consequence = "Only the frost guard still runs; when the battery is empty, nothing does.",
            Action = ChargeIt,
            DelaySeconds = place.Persistence("batteryEmpty"),
            ClearSeconds = 30 * Minute,
            DeadBand = 0.6,
            Unit = "V",
        };
        yield return new("batteryLow", "The battery is low", Medium, AlarmGroup.Power, place.Interlock("batteryLow"))
        {
            Cause = "Days without sun, snow on the panel, or a pump that ran much.",
            Consequence = "The blower rests; if it goes on, the pump will.",
            Action = ChargeIt,
            DelaySeconds = place.Persistence("batteryLow"),
            ClearSeconds = 2 * 60 * Minute,
            DeadBand = 0.6,
            Unit = "V",
            FollowsFrom = ["batteryEmpty"],
        };
        if (!place.Has(Channel.BlowerPower))
        {
            yield break;
        }

        yield return new("blowerSilent", "The blower takes no power", Low, AlarmGroup.Power, (facts, _) =>
            facts.Before is not { BlowerDuty: >= TurningDuty } || facts.Value(Channel.BlowerPower) is not { } w ? null : w < SilentWatts)
        {
            Cause = "A blown fuse, a relay that does not close, a loose wire, or a dead blower.",
            Consequence = "No warm air comes; the water gives what it can.",
            Action = "Look at fuse, relay and wiring. Pull the plug of the rig before you reach in; a blower can start by itself.",
            DelaySeconds = 5 * Minute,
            BridgeSeconds = Minute,
            ClearSeconds = 5 * Minute,
            FollowsFrom = [Sources.Rig],
        };
        yield return new("blowerRunsOff", "The blower runs though it is told to stand", Low, AlarmGroup.Power, (facts, _) =>
            facts.Before is not { BlowerDuty: <= 0 } || facts.Value(Channel.BlowerPower) is not { } w ? null : w > StandbyWatts)
        {
            Cause = "A relay that is welded shut, a switch set to hand, or a power meter that counts noise.",
            Consequence = "The battery is emptied and the heap dried.",
            Action = "Pull the blower's plug, then look at its relay.",
            DelaySeconds = 5 * Minute,
            BridgeSeconds = 4 * Minute,
            ClearSeconds = 5 * Minute,
        };
    }
}
