using PileController.Control.Readings;
using static PileController.Alarms.AlarmPriority;
using static PileController.Alarms.Signs;

namespace PileController.Alarms.Rows;

/// <summary>Readings that are each sound by themselves and do not fit together.</summary>
internal static class DoubtRows
{
    private const double Hour = 3600;

    // Water that gives heat comes back cooler; a kelvin and a half is more than two probes are apart (DS18B20 data sheet:
    // half a kelvin each, from memory).
    private const double WarmerBackK = 1.5;
    private const double LeastFlow = 0.5;

    public static IEnumerable<AlarmRow> Of(AlarmPlace place) =>
    [
        new("estimateDoubt", "The heap's probes and its heat do not fit together", Medium, AlarmGroup.Probes,
            When(f => f.Decision is { } d ? !d.Estimate.Trusted : null))
        {
            Cause = "A heap probe that drifts or slipped out of its place, a heap that was dug into or watered, or too few probes.",
            Consequence = "The heap is drawn on slowly, and for comfort only while it seems far above its floor, until it is understood again.",
            Action = "Compare the heap's probes with a long thermometer (gloves; mind steam and gases), and replace the one that lies.",
            DelaySeconds = Hour, BridgeSeconds = 600, ClearSeconds = 6 * Hour,
            FollowsFrom =
            [
                Sources.Rig, Sources.Bus, Sources.HeapBlind,
                .. place.Fitted.Where(c => Sources.InHeap(c) || c is Channel.Supply or Channel.Return or Channel.Flow).Select(Sources.Probe),
            ],
        },
        new("waterDoubt", "The water comes back warmer than it left the heap", Low, AlarmGroup.Water, Backwards)
        {
            Cause = "The supply or return probe drifts or slipped off its pipe, or the two are mixed up.",
            Consequence = "Drawn heat is measured wrongly.",
            Action = "Compare the two probes in one glass of water, and bind them to their pipes again. The pipes can be hot enough to burn.",
            DelaySeconds = Hour / 3, BridgeSeconds = 300, ClearSeconds = Hour,
            FollowsFrom = [Sources.Rig, Sources.Bus, Sources.Probe(Channel.Supply), Sources.Probe(Channel.Return)],
        },
    ];

    // Only while water moves; in a standing loop each pipe takes the warmth of its own place.
    private static bool? Backwards(AlarmFacts facts, bool standing) =>
        facts.Before is not { PumpDuty: > 0 } || facts.Value(Channel.Flow) is not > LeastFlow ? null
        : facts.Value(Channel.Supply) is { } supply && facts.Value(Channel.Return) is { } back ? back > supply + WarmerBackK : null;
}
