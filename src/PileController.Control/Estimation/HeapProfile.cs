using PileController.Control.Readings;
using PileController.Physics;

namespace PileController.Control.Estimation;

/// <summary>What the probes say of the heap's radial profile at one moment.</summary>
/// <param name="ActiveZoneC">Mean of the hottest half of the volume, °C.</param>
/// <param name="BodyC">Mean of the inner body, cold bed at the turns included, °C: where the active zone goes once heat has evened out.</param>
/// <param name="CoreC">At the core, °C.</param>
/// <param name="TurnsC">At the turns, °C.</param>
/// <param name="ProbesUsed">How many heap probes could be believed, 0 to 4.</param>
public readonly record struct HeapProfile(double ActiveZoneC, double BodyC, double CoreC, double TurnsC, int ProbesUsed)
{
    private const int Rings = 24;

    // How far the cold reaches from the turns: a draw chills a sleeve of the bed round the pipe, not all that lies
    // between the turns and the next probe, m (from seasons of the simulated heap).
    private const double DipM = 0.08;

    // The inner body ends here, as a share of the radius; outside lies the rind that follows the weather.
    private const double BodyShare = 0.75;

    /// <summary>
    /// Joins the probes that can be believed by lines that fall with the square of the radius, as in a round body that
    /// makes its heat all through; level inside the innermost and falling to the air outside beyond the outermost; and
    /// takes volume-weighted means. What the probe at the turns lies below those lines is a dip that fades with the
    /// distance from the turns.
    /// </summary>
    /// <param name="places">Where the probes sit.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    public static HeapProfile From(HeapProbePlaces places, RigReadings readings, double outsideC)
    {
        Span<double> radius = stackalloc double[6];
        Span<double> value = stackalloc double[6];
        int n = 0;
        Add(readings, Channel.HeapCore, places.CoreM, radius, value, ref n);
        Add(readings, Channel.HeapMiddle, places.MiddleM, radius, value, ref n);
        Add(readings, Channel.HeapEdge, places.EdgeM, radius, value, ref n);

        double atTurns = 0;

        // With no other probe inside the turns there is no line a dip could be seen against.
        bool dips = n >= 2 && radius[0] <= places.TurnsM && readings.TryGet(Channel.HeapTurns, out atTurns);
        if (!dips)
        {
            Add(readings, Channel.HeapTurns, places.TurnsM, radius, value, ref n);
        }

        int used = n + (dips ? 1 : 0);
        if (used == 0)
        {
            return default;
        }

        // Under its cover the face of the heap is about half way between the air and the bed a little further in.
        radius[n] = places.RadiusM;
        value[n] = 0.5 * (value[n - 1] + outsideC);
        n++;

        double dip = dips ? At(places.TurnsM, radius[..n], value[..n]) - atTurns : 0;
        Span<double> t = stackalloc double[Rings];
        Span<double> weight = stackalloc double[Rings];
        double step = places.RadiusM / Rings;
        double body = 0;
        double bodyWeight = 0;
        for (int i = 0; i < Rings; i++)
        {
            double r = (i + 0.5) * step;
            t[i] = At(r, radius[..n], value[..n]) - (dip * Fading(r - places.TurnsM));
            weight[i] = r;
            if (r < BodyShare * places.RadiusM)
            {
                body += r * t[i];
                bodyWeight += r;
            }
        }

        double core = At(places.CoreM, radius[..n], value[..n]) - (dip * Fading(places.CoreM - places.TurnsM));
        double turns = At(places.TurnsM, radius[..n], value[..n]) - dip;
        return new HeapProfile(HottestHalf(t, weight), body / bodyWeight, core, turns, used);
    }

    /// <summary>What those lines say at one radius without the dip, °C; the air outside where no probe can be believed.</summary>
    /// <param name="places">Where the probes sit.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="radiusM">Where, m from the axis.</param>
    public static double AtRadius(HeapProbePlaces places, RigReadings readings, double outsideC, double radiusM)
    {
        Span<double> radius = stackalloc double[6];
        Span<double> value = stackalloc double[6];
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

        radius[n] = places.RadiusM;
        value[n] = 0.5 * (value[n - 1] + outsideC);
        return At(radiusM, radius[..(n + 1)], value[..(n + 1)]);
    }

    private static double Fading(double metres) => Portable.Exp(-0.5 * metres * metres / (DipM * DipM));

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

    private static double At(double r, ReadOnlySpan<double> radius, ReadOnlySpan<double> value)
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

    private static double HottestHalf(Span<double> t, Span<double> weight)
    {
        double total = 0;
        for (int i = 0; i < t.Length; i++)
        {
            total += weight[i];
            double ti = t[i];
            double wi = weight[i];
            int at = i;
            while (at > 0 && t[at - 1] < ti)
            {
                t[at] = t[at - 1];
                weight[at] = weight[at - 1];
                at--;
            }

            t[at] = ti;
            weight[at] = wi;
        }

        double left = 0.5 * total;
        double sum = 0;
        for (int i = 0; i < t.Length && left > 0; i++)
        {
            double part = Math.Min(left, weight[i]);
            sum += part * t[i];
            left -= part;
        }

        return sum / (0.5 * total);
    }
}
