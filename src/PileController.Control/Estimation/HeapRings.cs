using PileController.Physics;

namespace PileController.Control.Estimation;

/// <summary>
/// The observer's own heap: rings and a sleeve that conduct, lose heat through cover and ground, and make it as far as the
/// draught of their own warmth brings air. One backward Euler step of any length; what is made and what the draught
/// carries off are taken at the step's start, since they change over days. Works on the caller's temperatures, allocates nothing.
/// </summary>
/// <remarks>
/// Net heat as a function of temperature is not fitted: it is what microbes make of the oxygen the draught carries in
/// (weight of the warm column over the resistance of its path, Darcy; Haug's oxygen factor) less the enthalpy with which
/// that gas leaves saturated. It rises to about 58 °C, falls above, and a cool heap breathes less. By midwinter that gas has
/// dried the outer bed, and microbes have burnt it, to three quarters of the heat capacity it was built with: a hard draw
/// cools it the faster.
/// </remarks>
public static class HeapRings
{
    private const double GravityMPerS2 = 9.80665;
    private const double AirPaS = 1.85e-5;

    // The inner body ends here, as a share of the radius; outside lies the rind that follows the weather.
    private const double BodyShare = 0.75;

    // Resistance of the ground under the heap, m²·K/W (common practice, no source).
    private const double GroundM2KPerW = 1.5;

    // Resistance of the air's film in a light wind, m²·K/W (common practice, no source).
    private const double FilmM2KPerW = 0.07;

    // Of the resistance between bed and water seven tenths lie within the sleeve: two cylinders, pipe to the sleeve's mean
    // radius and from there to half way between the turns.
    private const double WallShare = 0.72;

    /// <summary>A step with a draw that is known, as metered.</summary>
    /// <param name="t">Temperatures, °C: <see cref="HeapShape.Nodes"/> of them.</param>
    /// <param name="p">The heap.</param>
    /// <param name="seconds">Length, s; 10 minutes to an hour.</param>
    /// <param name="load">What is drawn and what is round it.</param>
    public static HeapStep Step(Span<double> t, in HeapFigures p, double seconds, in HeapLoad load) =>
        Step(t, p, seconds, load, default);

    /// <summary>A step with water running through coil and drum: what it takes is found with the cooling it causes.</summary>
    /// <param name="t">Temperatures, °C: <see cref="HeapShape.Nodes"/> of them.</param>
    /// <param name="p">The heap.</param>
    /// <param name="seconds">Length, s; 10 minutes to an hour.</param>
    /// <param name="load">What is drawn besides, and what is round it.</param>
    /// <param name="flow">The water, as a mean over the step.</param>
    /// <param name="spentJPerM3K">
    /// What each node's bed loses of its heat capacity is added to it, J/(m³·K); empty where that is not asked, as over hours it is little.
    /// </param>
    public static HeapStep Step(
        Span<double> t, in HeapFigures p, double seconds, in HeapLoad load, in HeapFlow flow, Span<double> spentJPerM3K = default)
    {
        const int n = HeapShape.Rings;
        HeapShape shape = p.Shape;
        ReadOnlySpan<double> volume = shape.VolumeM3;
        ReadOnlySpan<double> face = shape.FaceM;
        ReadOnlySpan<double> planM2 = shape.PlanM2;
        ReadOnlySpan<double> duct = shape.DuctShare;
        Span<double> ratio = stackalloc double[n];
        double cover = p.CoverM2KPerW + FilmM2KPerW;
        double inverse = 1 / seconds;
        OutsideAir air = OutsideAir.At(load.OutsideC);
        double draught = p.PermeabilityM2 / AirPaS * GravityMPerS2 * air.KgPerM3;
        double blown = load.BlownM3PerS * air.KgPerM3 / shape.BedM3;
        double before = Stored(t, p);
        BedAt sleeveBed = BedCurves.At(t[HeapShape.Sleeve]);
        double coil = p.CoilWPerK * sleeveBed.ConductivityWPerMK / BedCurves.ReferenceWPerMK;
        double toWater = Exchange(coil / WallShare, flow.WPerK);
        double toRing = coil / (1 - WallShare);
        double outC = flow.ReturnC + (flow.WPerK > 0 ? toWater / flow.WPerK * (t[HeapShape.Sleeve] - flow.ReturnC) : 0);

        // The drum: first node of the chain.
        double left = 0;
        BedAt bed = BedCurves.At(t[0]);
        double conductivity = p.ConductivityFactor * bed.ConductivityWPerMK;
        double right = shape.DrumFaceM * conductivity;
        double drumStore = shape.DrumJPerK * inverse;
        double drumScale = 1 / (drumStore + right + flow.WPerK);
        double lastRatio = right * drumScale;
        double last = ((drumStore * t[HeapShape.Drum]) - load.DrumWatts + (flow.WPerK * outC)) * drumScale;
        double drumRatio = lastRatio;
        double drumValue = last;

        // The sleeve: a leaf on the coil's ring, taken out beforehand.
        double sleeveStore = p.JPerM3KOf(HeapShape.Sleeve) * inverse * shape.SleeveM3;
        double sleeveScale = 1 / (sleeveStore + toRing + toWater);
        BedLife life = Life(p, t[HeapShape.Sleeve], sleeveBed, shape.CoilRing, draught, blown, air);
        double goneWatts = Spend(life, HeapShape.Sleeve, shape.SleeveM3, t[HeapShape.Sleeve], seconds, spentJPerM3K);
        double throughWatts = shape.SleeveM3 * blown * (sleeveBed.GasJPerKg - air.JPerKg);
        double sleeveValue = ((sleeveStore * t[HeapShape.Sleeve]) + (shape.SleeveM3 * life.WattsPerM3)
            - load.CoilWatts + (toWater * flow.ReturnC)) * sleeveScale;
        double sleeveRatio = toRing * sleeveScale;

        for (int i = 0; i < n; i++)
        {
            left = right;
            double k = conductivity;
            life = Life(p, t[i], bed, i, draught, blown, air);
            goneWatts += Spend(life, i, volume[i], t[i], seconds, spentJPerM3K);
            throughWatts += volume[i] * blown * (bed.GasJPerKg - air.JPerKg);
            double plan = planM2[i];
            double quarter = 0.25 * shape.HeightM / k;
            double top = plan / (quarter + cover);
            double ground = plan / (quarter + GroundM2KPerW);
            double ring = p.JPerM3KOf(i) * inverse * volume[i];
            double value = (ring * t[i]) + (volume[i] * life.WattsPerM3) + (ground * load.GroundC);
            if (i + 1 < n)
            {
                bed = BedCurves.At(t[i + 1]);
                conductivity = p.ConductivityFactor * bed.ConductivityWPerMK;
                right = face[i] * 0.5 * (k + conductivity);
            }
            else
            {
                right = 0;
                top += shape.SideM2 / ((shape.RimM / k) + cover);
            }

            value += top * load.OutsideC;
            double diagonal = ring + left + right + top + ground;
            if (i == shape.CoilRing)
            {
                diagonal += toRing * (1 - sleeveRatio);
                value += toRing * sleeveValue;
            }

            value -= load.DuctWatts * duct[i];
            double scale = 1 / (diagonal - (left * lastRatio));
            value = (value + (left * last)) * scale;
            lastRatio = right * scale;
            last = value;
            ratio[i] = lastRatio;
            t[i] = value;
        }

        for (int i = n - 2; i >= 0; i--)
        {
            t[i] += ratio[i] * t[i + 1];
        }

        t[HeapShape.Drum] = drumValue + (drumRatio * t[0]);
        t[HeapShape.Sleeve] = sleeveValue + (sleeveRatio * t[shape.CoilRing]);
        double coilWatts = load.CoilWatts + (toWater * (t[HeapShape.Sleeve] - flow.ReturnC));
        double drumWatts = load.DrumWatts + (flow.WPerK * (t[HeapShape.Drum] - outC));
        double drawn = coilWatts + drumWatts + load.DuctWatts + throughWatts;
        return new HeapStep(coilWatts, drumWatts, ((Stored(t, p) - before) * inverse) + drawn - goneWatts);
    }

    /// <summary>Heat stored in bed and drum above 0 °C, J.</summary>
    /// <param name="t">Temperatures, °C.</param>
    /// <param name="p">The heap.</param>
    public static double Stored(ReadOnlySpan<double> t, in HeapFigures p)
    {
        ReadOnlySpan<double> volume = p.Shape.VolumeM3;
        double sum = p.Shape.DrumJPerK * t[HeapShape.Drum];
        sum += p.JPerM3KOf(HeapShape.Sleeve) * p.Shape.SleeveM3 * t[HeapShape.Sleeve];
        for (int i = 0; i < volume.Length; i++)
        {
            sum += p.JPerM3KOf(i) * volume[i] * t[i];
        }

        return sum;
    }

    /// <summary>Mean of the hottest half of the bed, °C.</summary>
    /// <param name="t">Temperatures, °C.</param>
    /// <param name="shape">How the heap is cut.</param>
    public static double ActiveZone(ReadOnlySpan<double> t, HeapShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Span<double> weights = stackalloc double[HeapShape.Nodes];
        return ActiveZone(t, shape, weights);
    }

    /// <summary>Mean of the hottest half of the bed, °C, and what share each temperature has in it: the slope of that mean.</summary>
    /// <param name="t">Temperatures, °C.</param>
    /// <param name="shape">How the heap is cut.</param>
    /// <param name="weights">Filled with the shares; they sum to 1.</param>
    public static double ActiveZone(ReadOnlySpan<double> t, HeapShape shape, Span<double> weights)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Span<int> order = stackalloc int[HeapShape.Rings + 1];
        for (int i = 0; i < order.Length; i++)
        {
            int at = i;
            for (; at > 0 && t[order[at - 1]] < t[i]; at--)
            {
                order[at] = order[at - 1];
            }

            order[at] = i;
        }

        weights.Clear();
        double half = 0.5 * shape.BedM3;
        double left = half;
        double sum = 0;
        for (int i = 0; i < order.Length && left > 0; i++)
        {
            double part = Math.Min(left, shape.BedM3Of(order[i]));
            weights[order[i]] = part / half;
            sum += part * t[order[i]];
            left -= part;
        }

        return sum / half;
    }

    /// <summary>Mean of the inner body, °C: all within three quarters of the radius, cold bed at the turns included.</summary>
    /// <param name="t">Temperatures, °C.</param>
    /// <param name="shape">How the heap is cut.</param>
    public static double Body(ReadOnlySpan<double> t, HeapShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        double end = BodyShare * shape.RadiusM;
        double sum = 0;
        double whole = 0;
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            // The ring in which the body ends counts as far as it lies within, by its thickness.
            double within = Math.Clamp((end - shape.EdgeM[i]) / (shape.EdgeM[i + 1] - shape.EdgeM[i]), 0, 1);
            double sleeve = i == shape.CoilRing ? shape.SleeveM3 : 0;
            sum += within * ((shape.VolumeM3[i] * t[i]) + (sleeve * t[HeapShape.Sleeve]));
            whole += within * (shape.VolumeM3[i] + sleeve);
        }

        return sum / whole;
    }

    /// <summary>What the water would take from coil and drum at this moment, W, as the bed stands: in the long run it takes less.</summary>
    /// <param name="t">Temperatures, °C.</param>
    /// <param name="p">The heap.</param>
    /// <param name="flow">The water.</param>
    public static (double CoilWatts, double DrumWatts) Reach(ReadOnlySpan<double> t, in HeapFigures p, in HeapFlow flow)
    {
        if (flow.WPerK <= 0)
        {
            return (0, 0);
        }

        double coil = SleeveWPerK(t, p, flow.WPerK) * (t[HeapShape.Sleeve] - flow.ReturnC);
        double outC = flow.ReturnC + (coil / flow.WPerK);
        return (coil, flow.WPerK * (t[HeapShape.Drum] - outC));
    }

    /// <summary>Conductance from the sleeve to water of a flow, referred to the water as it comes in, W/K.</summary>
    /// <param name="t">Temperatures, °C.</param>
    /// <param name="p">The heap.</param>
    /// <param name="flowWPerK">Flow × heat capacity of the water, W/K.</param>
    public static double SleeveWPerK(ReadOnlySpan<double> t, in HeapFigures p, double flowWPerK)
    {
        double bed = BedCurves.At(t[HeapShape.Sleeve]).ConductivityWPerMK / BedCurves.ReferenceWPerMK;
        return Exchange(p.CoilWPerK * bed / WallShare, flowWPerK);
    }

    private static double Exchange(double conductance, double flowWPerK) =>
        flowWPerK > 0 ? flowWPerK * (1 - Portable.Exp(-conductance / flowWPerK)) : 0;

    private static BedLife Life(
        in HeapFigures p, double celsius, in BedAt bed, int ring, double draught, double blown, in OutsideAir air)
    {
        double airKg = blown + (draught * p.Shape.DraughtPerM[ring] * Math.Abs(air.KgPerM3 - bed.GasKgPerM3));
        double demand = p.DemandWPerM3 * Math.Max(0, 1 + (p.DemandSlope * p.Shape.Outness[ring]));
        return BedLife.Of(demand, celsius, bed, airKg, air);
    }

    // Takes down what a node loses of its heat capacity, and tells the heat that goes with it, W.
    private static double Spend(in BedLife life, int node, double volumeM3, double celsius, double seconds, Span<double> spentJPerM3K)
    {
        if (!spentJPerM3K.IsEmpty)
        {
            spentJPerM3K[node] += seconds * life.SpentWPerM3K;
        }

        return volumeM3 * celsius * life.SpentWPerM3K;
    }
}
