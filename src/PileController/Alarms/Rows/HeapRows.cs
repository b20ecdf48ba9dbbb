using static PileController.Alarms.AlarmPriority;
using static PileController.Alarms.Signs;

namespace PileController.Alarms.Rows;

/// <summary>The heap.</summary>
internal static class HeapRows
{
    private const double Hour = 3600;

    public static IEnumerable<AlarmRow> Of(AlarmPlace place) =>
    [
        new("heapFire", "The heap is too hot: fire watch", High, AlarmGroup.Heap, place.Interlock("heapFire"))
        {
            Cause = "Hotter than microbes can make it: chemical heating in a dry spot, air that feeds it, or a probe that drifts away from its neighbours.",
            Consequence = "The heap may catch fire and give off carbon monoxide. The blower is held off.",
            Action = "Keep people back and do not open the heap. Look for smoke and smell; call the fire service if in doubt. Have water at hand, and nobody goes into the house while gas may gather there.",
            DelaySeconds = place.Persistence("heapFire"), ClearSeconds = Hour, DeadBand = 5, Unit = "K", ProtectsPeople = true,
        },
        new(Sources.HeapBlind, "No probe in the heap can be believed", Medium, AlarmGroup.Probes, place.Interlock("heapBlind"))
        {
            Cause = "The heap's cable is torn, wet or chewed, or all its probes failed.",
            Consequence = "All draw is held off; a fire in the heap would go unseen.",
            Action = "Look at the heap's cable and plugs. Feel the heap with a long thermometer: gloves, and mind hot steam and gases when you open it.",
            DelaySeconds = place.Persistence("heapBlind"), ClearSeconds = 300, FollowsFrom = [Sources.Rig, Sources.Bus],
        },
        new("heapCool", "The heap is below its floor", Medium, AlarmGroup.Heap, Below(Zone, place.Control.HeapFloorC - 1, 1))
        {
            Cause = "It was drawn harder than it bears, it is too dry or too wet, or its food is used up.",
            Consequence = "Its microbes go quiet, and the winter's heat is lost.",
            Action = "Let it rest: take nothing by hand. Feel whether the chips are moist as a wrung sponge, and water them if not; gloves and a mask, it gives off steam, ammonia and spores.",
            DelaySeconds = 6 * Hour, ClearSeconds = 6 * Hour, DeadBand = 1, Unit = "K",
        },
    ];

    // A heap that has not lit has no floor to fall below.
    private static double? Zone(AlarmFacts facts) =>
        facts.Decision is { Estimate: { Lit: true, Trusted: true } estimate } ? estimate.ActiveZoneCelsius : null;
}
