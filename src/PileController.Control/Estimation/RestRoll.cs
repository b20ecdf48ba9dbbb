namespace PileController.Control.Estimation;

/// <summary>
/// Where the active zone would go if nothing more were drawn: the bed that the draw has chilled drinks on from its
/// neighbours for a day, and takes the hottest half down with it. A draw has to stop before the zone itself is at its floor.
/// </summary>
public static class RestRoll
{
    private const double ShortSeconds = 3600;
    private const double LongSeconds = 3 * 3600;

    // Most of the fall comes within hours; after that the steps may be long.
    private const int ShortSteps = 6;

    /// <summary>The least the active zone comes to at rest within a look-ahead, itself now included, °C.</summary>
    /// <param name="heapC">Temperatures now, °C: <see cref="HeapShape.Nodes"/> of them.</param>
    /// <param name="heap">The heap.</param>
    /// <param name="outsideC">Air outside, held, °C.</param>
    /// <param name="groundC">Deep ground, °C.</param>
    /// <param name="hours">How far is looked, h.</param>
    public static double LeastZoneC(ReadOnlySpan<double> heapC, in HeapFigures heap, double outsideC, double groundC, double hours)
    {
        Span<double> t = stackalloc double[HeapShape.Nodes];
        heapC[..HeapShape.Nodes].CopyTo(t);
        HeapLoad load = new(0, 0, 0, outsideC, groundC);
        double least = HeapRings.ActiveZone(t, heap.Shape);
        double seconds = hours * 3600;
        for (int i = 0; seconds > 0; i++)
        {
            double step = Math.Min(seconds, i < ShortSteps ? ShortSeconds : LongSeconds);
            HeapRings.Step(t, heap, step, load);
            least = Math.Min(least, HeapRings.ActiveZone(t, heap.Shape));
            seconds -= step;
        }

        return least;
    }
}
