using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>What the probes alone say of the heap at one moment: where the observer begins.</summary>
internal static class ProbeLines
{
    // Four probes and the face.
    private const int MostPlaces = 5;

    /// <summary>
    /// Joins the probes that can be believed by lines that fall with the square of the radius, as in a round body that makes
    /// its heat all through; level inside the innermost and falling to the air outside beyond the outermost. The probe at the
    /// turns counts only where no two others are left: a draw chills the bed there, not all that lies between.
    /// </summary>
    /// <param name="places">Where the probes sit.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="radiusM">Where, m from the axis.</param>
    /// <returns>Temperature there, °C; that of the air outside where no probe can be believed.</returns>
    public static double At(
        HeapProbePlaces places, RigReadings readings, double outsideC, double radiusM)
    {
        Span<double> radius = stackalloc double[MostPlaces];
        Span<double> value = stackalloc double[MostPlaces];
        int n = 0;
        Add(readings, Channel.HeapCore, places.CoreM, radius, value, ref n);
        Add(readings, Channel.HeapMiddle, places.MiddleM, radius, value, ref n);
        Add(readings, Channel.HeapEdge, places.EdgeM, radius, value, ref n);
        if (n < 2)
        {
            Add(readings, Channel.HeapTurns, places.TurnsM, radius, value, ref n);
        }

        if (n == 0)
        {
            return outsideC;
        }

        // Under its cover the face of the heap is about half way between the air and the bed a little further in.
        radius[n] = places.RadiusM;
        value[n] = 0.5 * (value[n - 1] + outsideC);
        return Between(radiusM, radius[..(n + 1)], value[..(n + 1)]);
    }

    private static void Add(
        RigReadings readings, Channel channel, double radiusM, Span<double> radius, Span<double> value, ref int n)
    {
        if (readings.TryGet(channel, out double celsius))
        {
            // Kept in order of radius, wherever the probes were put.
            int at = n++;
            for (; at > 0 && radius[at - 1] > radiusM; at--)
            {
                radius[at] = radius[at - 1];
                value[at] = value[at - 1];
            }

            radius[at] = radiusM;
            value[at] = celsius;
        }
    }

    private static double Between(double r, ReadOnlySpan<double> radius, ReadOnlySpan<double> value)
    {
        if (r <= radius[0])
        {
            return value[0];
        }

        for (int i = 1; i < radius.Length; i++)
        {
            if (r <= radius[i])
            {
                double inner = radius[i - 1] * radius[i - 1];
                return value[i - 1] + (((r * r) - inner) / ((radius[i] * radius[i]) - inner) * (value[i] - value[i - 1]));
            }
        }

        return value[^1];
    }
}
