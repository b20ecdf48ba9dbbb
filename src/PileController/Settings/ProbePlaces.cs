using PileController.Control;
using PileController.Control.Readings;
using PileController.Rigs;

namespace PileController.Settings;

/// <summary>Tells the controller where the heap's probes sit, from the rig's list and the heap as built.</summary>
internal static class ProbePlaces
{
    /// <summary>
    /// The places. Where a probe is not fitted its place only says for which radius the controller reckons: the turns
    /// are where the coil lies, the core is a quarter of the way out, middle and edge lie between their neighbours.
    /// </summary>
    public static HeapProbePlaces Of(PileSettings settings)
    {
        double radius = settings.Heap.RadiusM;
        double turns = PlaceOf(settings, Channel.HeapTurns) ?? settings.Heap.Coil.RadiusM;
        double core = PlaceOf(settings, Channel.HeapCore) ?? Math.Min(radius / 4, turns / 2);
        return new HeapProbePlaces
        {
            CoreM = core,
            MiddleM = PlaceOf(settings, Channel.HeapMiddle) ?? ((core + turns) / 2),
            TurnsM = turns,
            EdgeM = PlaceOf(settings, Channel.HeapEdge) ?? ((turns + radius) / 2),
            RadiusM = radius,
        };
    }

    private static double? PlaceOf(PileSettings settings, Channel channel)
    {
        foreach (ProbeFit probe in settings.Rig.Probes)
        {
            if (probe.Channel == channel)
            {
                return probe.RadiusM;
            }
        }

        return null;
    }
}
