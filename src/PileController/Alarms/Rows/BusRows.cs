using PileController.Control.Readings;
using static PileController.Alarms.AlarmPriority;

namespace PileController.Alarms.Rows;

/// <summary>The bus all thermometers hang on.</summary>
internal static class BusRows
{
    // Two probes can fail on their own; more at a time have something in common (common practice, no source).
    private const int LeastProbes = 3;

    public static IEnumerable<AlarmRow> Of(AlarmPlace place)
    {
        Channel[] bus = [.. place.Fitted.Where(Sources.OnBus)];
        int needed = Math.Max(LeastProbes, (bus.Length + 1) / 2);
        return
        [
            new AlarmRow(Sources.Bus, "The probe bus is in trouble", Medium, AlarmGroup.Probes, (facts, _) => Ill(facts, bus) >= needed)
            {
                Cause = "Half the thermometers or more answer late, garbled or not at all: the cable they share, its plug, its resistor, or water in a junction.",
                Consequence = "The heap is drawn on by guess or not at all, and frost in the lines may go unseen.",
                Action = "Follow the cable from the board outwards, unplug one branch after another until the rest answers. It carries a few volts only; keep mains cables away from it.",
                DelaySeconds = 120, BridgeSeconds = 60, ClearSeconds = 300, FollowsFrom = [Sources.Rig],
                Detail = facts => $"{Ill(facts, bus)} of {bus.Length} thermometers",
            },
        ];
    }

    private static int Ill(AlarmFacts facts, Channel[] bus)
    {
        int ill = 0;
        foreach (Channel channel in bus)
        {
            ill += facts.Raw[channel].Quality is ReadingQuality.Good or ReadingQuality.NotFitted ? 0 : 1;
        }

        return ill;
    }
}
