using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>What each heap probe sees of the rings.</summary>
internal static class ProbeSight
{
    // The probe at the turns sits a few centimetres from the pipe: mostly in the sleeve.
    private const double TurnsSleeveShare = 0.7;

    /// <summary>The channel of a probe, by its place among them.</summary>
    public static Channel ChannelOf(int probe) => probe switch
    {
        0 => Channel.HeapCore,
        1 => Channel.HeapMiddle,
        2 => Channel.HeapTurns,
        _ => Channel.HeapEdge,
    };

    /// <summary>The temperature where a probe is, °C, and the slopes of its reading, its own error's included.</summary>
    public static double See(ControlSettings settings, HeapShape shape, int probe, ReadOnlySpan<double> x, Span<double> h)
    {
        h.Clear();
        h[HeapBelief.FirstProbe + probe] = 1;
        HeapProbePlaces places = settings.Places;
        double radius = probe switch { 0 => places.CoreM, 1 => places.MiddleM, 2 => places.TurnsM, _ => places.EdgeM };
        if (probe == 2 && shape.RingAt(radius) == shape.CoilRing)
        {
            h[HeapShape.Sleeve] = TurnsSleeveShare;
            h[shape.CoilRing] = 1 - TurnsSleeveShare;
            return (TurnsSleeveShare * x[HeapShape.Sleeve]) + ((1 - TurnsSleeveShare) * x[shape.CoilRing]);
        }

        radius += x[HeapBelief.FirstPlace + probe];
        int i = 0;
        while (i < HeapShape.Rings - 2 && radius > shape.CentreM(i + 1))
        {
            i++;
        }

        double place = Math.Clamp((radius - shape.CentreM(i)) / (shape.CentreM(i + 1) - shape.CentreM(i)), 0, 1);
        h[i] = 1 - place;
        h[i + 1] = place;
        h[HeapBelief.FirstPlace + probe] = (x[i + 1] - x[i]) / (shape.CentreM(i + 1) - shape.CentreM(i));
        return x[i] + (place * (x[i + 1] - x[i]));
    }
}
