using PileController.Control.Readings;
using PileController.Panel.Now;
using static PileController.Alarms.AlarmPriority;

namespace PileController.Alarms.Rows;

/// <summary>One row for each fitted probe but the house's, which has an interlock and a row of its own.</summary>
internal static class ProbeRows
{
    private const double Minute = 60;

    public static IEnumerable<AlarmRow> Of(AlarmPlace place) =>
        place.Fitted.Where(channel => channel != Channel.House).Select(channel => Row(place, channel));

    private static AlarmRow Row(AlarmPlace place, Channel channel)
    {
        string label = place.NameOf(channel);
        return new(Sources.Probe(channel), $"{label}: the probe cannot be believed", Low, AlarmGroup.Probes, (facts, _) => Doubted(place, channel, facts))
        {
            Cause = "It does not answer, is stuck, jumps, contradicts its neighbours, or tells what cannot be.",
            Consequence = Consequence(channel),
            Action = $"Look at the cable and plug of this probe ({label}). {Caution(channel)}",
            DelaySeconds = 10 * Minute,
            BridgeSeconds = 8 * Minute,
            // What shows while the loop runs only, or at one hour of the day, is one alarm and not one a run or a day.
            ClearSeconds = 26 * 60 * Minute,
            FollowsFrom = [.. Causes(channel)],
            Detail = facts => facts.Decision is not { } d ? null
                : d.Readings[channel].IsGood ? "tells what cannot be" : ProbeWords.Quality(d.Readings[channel].Quality),
        };
    }

    private static bool? Doubted(AlarmPlace place, Channel channel, AlarmFacts facts) => facts.Decision is not { } decision
        ? null
        : decision.Readings[channel].Quality switch
        {
            ReadingQuality.NotFitted => null,
            ReadingQuality.Good => Plausibility.CannotBe(place, channel, facts),
            _ => true,
        };

    private static IEnumerable<string> Causes(Channel channel)
    {
        yield return Sources.Rig;
        if (Sources.OnBus(channel))
        {
            yield return Sources.Bus;
        }

        if (channel == Channel.Floor)
        {
            // It is held against the house's air.
            yield return "houseHot";
            yield return Sources.HouseBlind;
        }

        if (Sources.InHeap(channel))
        {
            yield return Sources.HeapBlind;
        }
    }

    private static string Consequence(Channel channel) => channel switch
    {
        <= Channel.HeapEdge => "The estimate of the heap goes on from the other probes, with a wider margin.",
        Channel.Supply or Channel.Return => "Drawn heat is reckoned instead of measured.",
        Channel.Outside => "The outlook of the night goes by what was read last, and frost at the lines is taken to be possible.",
        Channel.Flow => "Drawn heat is reckoned from the pump, and no-flow is seen by the pump's power only.",
        Channel.PumpPower => "A pump that stands still is seen by the flow only.",
        Channel.Battery => "The battery may run empty unseen.",
        Channel.Leak => "A leak would go unseen.",
        Channel.Level => "A tank that runs dry would go unseen.",
        Channel.CarbonDioxide => "Foul air in the house would go unseen. Air the house before you go in.",
        >= Channel.Humidity => "It is not recorded; control does without it.",
        _ => "What it tells is left out of every sum.",
    };

    private static string Caution(Channel channel) => channel switch
    {
        <= Channel.HeapEdge => "Gloves, and mind hot steam and gases when you open the heap.",
        Channel.Supply or Channel.Return or Channel.Tank or Channel.Flow or Channel.DuctAir => "Pipes and ducts at the heap can be hot enough to burn.",
        Channel.PumpPower or Channel.BlowerPower or Channel.Battery => "Pull the plug of the rig first; mains parts are for a licensed electrician.",
        _ => "It carries a few volts only.",
    };
}
